package org.stook.app.sorting;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.stook.app.station.StationSettings;

/**
 * What the slates of a stack say, by the roles of the station.
 *
 * @param subject null where it is not known for sure
 * @param view null if no code has that role
 * @param codes all that was read
 * @param question what a person has to settle, null if nothing
 */
public record Label(
        @Nullable String subject,
        @Nullable String view,
        List<Read> codes,
        @Nullable String question) {
    /** A code and what it means; the role is "unknown" where no pattern fits. */
    public record Read(String role, String symbology, String text, String file) {}

    private static final Pattern ANYTHING = Pattern.compile(".+", Pattern.DOTALL);

    /** @param wanted whether a stack of this station has to have a slate */
    public static Label of(List<Shot> slates, Map<String, Pattern> roles, boolean wanted) {
        Map<String, Pattern> all = roles.containsKey(StationSettings.SUBJECT) || !roles.isEmpty()
                ? roles
                : Map.of(StationSettings.SUBJECT, ANYTHING);
        Set<String> subjects = new LinkedHashSet<>();
        Set<String> views = new LinkedHashSet<>();
        List<Read> codes = new ArrayList<>();
        for (Shot slate : slates) {
            for (Shot.Code code : slate.sight().codes()) {
                boolean known = false;
                for (var role : all.entrySet()) {
                    Matcher found = role.getValue().matcher(code.text());
                    if (!found.find()) continue;
                    known = true;
                    String value = found.groupCount() > 0 && found.group(1) != null ? found.group(1) : found.group();
                    codes.add(new Read(role.getKey(), code.symbology(), value, slate.name()));
                    if (role.getKey().equals(StationSettings.SUBJECT)) subjects.add(value.strip());
                    if (role.getKey().equals(StationSettings.VIEW)) views.add(value.strip());
                }
                if (!known) codes.add(new Read("unknown", code.symbology(), code.text(), slate.name()));
            }
        }
        String subject = subjects.size() == 1 ? subjects.iterator().next() : null;
        String view = views.size() == 1 ? views.iterator().next() : null;
        return new Label(subject, view, codes, question(slates, codes, subjects, wanted));
    }

    private static @Nullable String question(
            List<Shot> slates, List<Read> codes, Set<String> subjects, boolean wanted) {
        if (subjects.size() == 1) {
            return null;
        }
        if (subjects.size() > 1) {
            return "its labels name several subjects (" + String.join(", ", subjects) + "): which one is it?";
        }
        if (!codes.isEmpty()) {
            return "its label says '%s', which is no subject by this station's patterns: which subject is it?"
                    .formatted(codes.get(0).text());
        }
        if (!slates.isEmpty()) {
            return "the label on %s could not be read: which subject is it?"
                    .formatted(slates.get(0).name());
        }
        return wanted ? "no frame of a label came with it: which subject is it?" : null;
    }
}
