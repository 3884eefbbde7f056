package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.springframework.core.io.FileSystemResource;
import org.springframework.core.io.Resource;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import org.stook.app.archive.Manifests;
import org.stook.app.publish.Publications;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Manifests (IIIF Presentation API 3.0) and the tiles that the workers cut (IIIF Image API 3.0, compliance level 0). */
@RestController
@RequestMapping("/iiif")
class IiifApi {
    private static final MediaType MANIFEST =
            MediaType.parseMediaType("application/ld+json;profile=\"http://iiif.io/api/presentation/3/context.json\"");
    private static final MediaType INFO =
            MediaType.parseMediaType("application/ld+json;profile=\"http://iiif.io/api/image/3/context.json\"");

    private final Manifests manifests;
    private final Publications publications;
    private final JsonMapper json;

    IiifApi(Manifests manifests, Publications publications, JsonMapper json) {
        this.manifests = manifests;
        this.publications = publications;
        this.json = json;
    }

    @GetMapping("/subjects/{subject}/manifest.json")
    ResponseEntity<String> manifest(@PathVariable String subject, HttpServletRequest request) {
        ObjectNode manifest = manifests
                .of(subject, address(request))
                .orElseThrow(() -> Refusal.notFound("There is no composite of the subject '" + subject + "'."));
        return ResponseEntity.ok().contentType(MANIFEST).body(manifest.toString());
    }

    @GetMapping("/images/{run}/info.json")
    ResponseEntity<String> info(@PathVariable long run, HttpServletRequest request) {
        ObjectNode info = (ObjectNode) json.readTree(tiles(run).toFile());
        info.put("id", address(request) + "/iiif/images/" + run);
        return ResponseEntity.ok().contentType(INFO).body(info.toString());
    }

    @GetMapping("/images/{run}/{region:[a-z0-9,]+}/{size:[a-z0-9,^!]+}/0/default.jpg")
    ResponseEntity<Resource> tile(@PathVariable long run, @PathVariable String region, @PathVariable String size) {
        Path file = tiles(run).resolveSibling(region).resolve(size).resolve("0").resolve("default.jpg");
        if (!Files.isRegularFile(file)) {
            throw Refusal.notFound(
                    "The composite of run " + run + " has no tile " + region + " in the size " + size + ".");
        }
        return ResponseEntity.ok()
                .contentType(MediaType.IMAGE_JPEG)
                // A publication never changes.
                .cacheControl(CacheControl.maxAge(Duration.ofDays(30)).cachePrivate())
                .body(new FileSystemResource(file));
    }

    /** info.json among the tiles of a run. */
    private Path tiles(long run) {
        return publications.file(run, "tiles").orElseThrow(() -> Refusal.notFound("Run " + run + " has no tiles."));
    }

    private static String address(HttpServletRequest request) {
        return ServletUriComponentsBuilder.fromContextPath(request).toUriString();
    }
}
