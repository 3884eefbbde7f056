package org.stook.imaging.blend;

class PyramidBlendTest extends BlendMethodContract {
    @Override
    BlendMethod method() {
        return new PyramidBlend();
    }
}
