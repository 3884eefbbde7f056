package org.stook.app.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;

class ChartsTest {
    /** Three frames; the second is turned by 0.5 degrees, 1 % larger and 3 px to the right about the middle (199.5, 149.5). */
    private static final RunRecord RECORD = read("""
            {"reference": "a.jpg", "commonArea": {"x": 10, "y": 8, "width": 380, "height": 284},
             "lostBorder": {"left": 10, "top": 8, "right": 10, "bottom": 8, "percent": 10.1}, "model": "similarity",
             "frames": [
              {"file": "a.jpg", "sha256": "%1$s", "role": "reference", "reason": "", "placement": [1,0,0,0,1,0,0,0,1], "exposureEv": 0},
              {"file": "b.jpg", "sha256": "%1$s", "role": "blended", "reason": "", "placement": %2$s, "exposureEv": 0.1},
              {"file": "c.jpg", "sha256": "%1$s", "role": "outside-span", "reason": "", "placement": [1,0,0,0,1,0,0,0,1], "exposureEv": 0},
              {"file": "d.jpg", "sha256": "%1$s", "role": "stray", "reason": "d.jpg: is black", "placement": null, "exposureEv": 0}],
             "focus": {"columns": 2, "rows": 2, "openFirstPercent": 0, "openLastPercent": 6.4,
              "gaps": [{"before": "b.jpg", "after": "c.jpg", "missing": 2.2}],
              "frames": [
               {"file": "a.jpg", "position": 0, "sharpestPercent": 34, "sharpness": [100, 20, -1, 66]},
               {"file": "b.jpg", "position": 1, "sharpestPercent": 33, "sharpness": [70, 100, -1, 91]},
               {"file": "c.jpg", "position": 4, "sharpestPercent": 33, "sharpness": [10, 30, -1, 100]}]},
             "settings": {"blend": "region"}}""".formatted("ab".repeat(32), turned()));

    @Test
    void driftIsThatOfThePlacementAtTheMiddleOfThePicture() {
        DriftChart.Drift drift = DriftChart.drifts(RECORD).get(1);
        assertThat(drift.right()).isCloseTo(3, within(1e-6));
        assertThat(drift.down()).isCloseTo(0, within(1e-6));
        assertThat(drift.degrees()).isCloseTo(0.5, within(1e-6));
        assertThat(drift.percent()).isCloseTo(1, within(1e-6));
        assertThat(DriftChart.shift(DriftChart.drifts(RECORD)).lines())
                .extracting(Chart.Line::name)
                .containsExactly("right", "down");
    }

    @Test
    void aGapIsMarkedBetweenItsFramesWhereTheyLieOnTheFocusAxis() {
        Chart chart = FocusChart.of(RECORD.focus().orElseThrow());
        assertThat(chart.bands()).hasSize(1);
        double span = chart.ticks().get(2).x() - chart.ticks().get(0).x();
        assertThat(chart.bands().get(0).width()).isCloseTo(0.75 * span, within(0.01));
        assertThat(chart.bands().get(0).label()).isEqualTo("about 2 missing");
        assertThat(chart.lines()).as("a cell without texture has none").hasSize(3);
    }

    @Test
    void theStripSaysWhereAFrameIsSharp() {
        List<FrameStrip.Picture> strip = FrameStrip.of(RECORD);
        assertThat(strip).extracting(FrameStrip.Picture::file).containsExactly("a.jpg", "b.jpg");
        assertThat(strip.get(1).sharp()).isEqualTo("M1 0h1v1h-1zM1 1h1v1h-1z");
        assertThat(strip.get(1).nearly()).isEqualTo("M0 0h1v1h-1z");
        assertThat(strip.get(1).share()).isEqualTo("33 %");
        assertThat(RECORD.strays()).extracting(RunRecord.Frame::reason).containsExactly("d.jpg: is black");
    }

    @Test
    void aSpotStaysInsideTheComposite() {
        assertThat(new Spot(5, 5, 100).within(RECORD.area()))
                .isEqualTo(new org.stook.imaging.frame.Area(10, 8, 100, 100));
        assertThat(new Spot(379, 283, 100).within(RECORD.area()))
                .isEqualTo(new org.stook.imaging.frame.Area(290, 192, 100, 100));
        assertThat(new Spot(100, 100, 9999).side()).isEqualTo(1024);
    }

    private static String turned() {
        double middleX = 10 + (380 - 1) / 2.0;
        double middleY = 8 + (284 - 1) / 2.0;
        return java.util.Arrays.toString(
                org.stook.imaging.frame.Placement.similarity(1.01, Math.toRadians(0.5), 3, 0, middleX, middleY)
                        .toArray());
    }

    private static RunRecord read(String json) {
        return RecordReader.read(JsonMapper.builder().build().readTree(json));
    }
}
