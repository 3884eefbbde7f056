package org.stook.imaging.blend;

class RegionBlendTest extends BlendMethodContract {
    @Override
    BlendMethod method() {
        return new RegionBlend();
    }
}
