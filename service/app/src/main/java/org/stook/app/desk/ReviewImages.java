package org.stook.app.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.springframework.core.io.FileSystemResource;
import org.springframework.core.io.Resource;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.stook.app.review.FramePictures;
import org.stook.app.review.Layers;
import org.stook.app.review.RunFiles;
import org.stook.app.review.SettingsDraft;
import org.stook.app.review.Spot;
import org.stook.app.review.ToneTrial;

/** The pictures of a review. What belongs to a published run never changes, so a browser may keep it. */
@Controller
class ReviewImages {
    /** What makes them. */
    @org.springframework.stereotype.Component
    record Darkroom(RunFiles files, Layers layers, FramePictures frames, ToneTrial trial) {}

    private final Darkroom darkroom;

    ReviewImages(Darkroom darkroom) {
        this.darkroom = darkroom;
    }

    /** Tiles of the composite, named after IIIF Image API 3.0, level 0. */
    @GetMapping("/runs/{run}/tiles/{region}/{size}/0/default.jpg")
    ResponseEntity<Resource> tile(@PathVariable long run, @PathVariable String region, @PathVariable String size) {
        return file(darkroom.files().tile(run, region + "/" + size + "/0/default.jpg"), "tile");
    }

    @GetMapping("/runs/{run}/frames/{rank}.jpg")
    ResponseEntity<Resource> frame(@PathVariable long run, @PathVariable int rank) {
        return file(darkroom.files().frame(run, rank), "frame");
    }

    @GetMapping("/runs/{run}/thumbnails/{rank}.jpg")
    ResponseEntity<Resource> thumbnail(@PathVariable long run, @PathVariable int rank) {
        return file(darkroom.files().thumbnail(run, rank), "frame");
    }

    /** @param kind source, depth or doubt */
    @GetMapping("/runs/{run}/layers/{kind}.png")
    ResponseEntity<byte[]> layer(@PathVariable long run, @PathVariable String kind) throws IOException {
        return picture(darkroom.layers().picture(run, kind), MediaType.IMAGE_PNG, "layer " + kind);
    }

    /** A part of a frame around a place. @param exact from the original, pixel by pixel; else from its small copy */
    @GetMapping("/runs/{run}/frames/{rank}/part.jpg")
    ResponseEntity<byte[]> part(
            @PathVariable long run,
            @PathVariable int rank,
            @RequestParam double x,
            @RequestParam double y,
            @RequestParam(defaultValue = "320") int side,
            @RequestParam(defaultValue = "false") boolean exact)
            throws IOException {
        Spot spot = new Spot(x, y, side);
        return picture(
                exact
                        ? darkroom.frames().exact(run, rank, spot)
                        : darkroom.frames().small(run, rank, spot),
                MediaType.IMAGE_JPEG,
                "frame");
    }

    /** The whole reference frame, that which the crop left out included. */
    @GetMapping("/runs/{run}/reference.jpg")
    ResponseEntity<byte[]> reference(@PathVariable long run) throws IOException {
        return picture(darkroom.frames().reference(run), MediaType.IMAGE_JPEG, "reference frame");
    }

    /** A frame with tones to try. */
    @GetMapping("/stacks/{id}/tones.jpg")
    ResponseEntity<byte[]> tones(
            @PathVariable long id,
            @RequestParam String frame,
            @RequestParam(defaultValue = "0") long run,
            @ModelAttribute SettingsDraft draft)
            throws IOException {
        try {
            return picture(darkroom.trial().picture(id, frame, draft, run), MediaType.IMAGE_JPEG, "frame " + frame);
        } catch (IllegalArgumentException e) {
            throw Refusal.unfit(String.valueOf(e.getMessage()));
        }
    }

    private static ResponseEntity<Resource> file(Optional<Path> file, String what) {
        return ResponseEntity.ok()
                .contentType(MediaType.IMAGE_JPEG)
                .cacheControl(kept())
                .body(new FileSystemResource(
                        file.orElseThrow(() -> Refusal.notFound("This run has no such " + what + "."))));
    }

    private static ResponseEntity<byte[]> picture(Optional<byte[]> picture, MediaType type, String what) {
        return ResponseEntity.ok()
                .contentType(type)
                .cacheControl(kept())
                .body(picture.orElseThrow(() -> Refusal.notFound("The " + what + " cannot be shown.")));
    }

    private static CacheControl kept() {
        return CacheControl.maxAge(Duration.ofDays(30)).cachePrivate().immutable();
    }
}
