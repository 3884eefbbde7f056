package org.stook.app.desk.live;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.stook.app.desk.Words;
import org.thymeleaf.TemplateSpec;
import org.thymeleaf.context.Context;
import org.thymeleaf.context.IExpressionContext;
import org.thymeleaf.context.IWebContext;
import org.thymeleaf.linkbuilder.StandardLinkBuilder;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.templatemode.TemplateMode;

/** Makes parts of pages outside of any request, by the templates that make the whole pages. */
@Component
public class Parts {
    private static final int MOST_KEPT = 200;

    private final SpringTemplateEngine engine;
    private final Words words;
    private final Map<List<Object>, String> made = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<List<Object>, String> eldest) {
            return size() > MOST_KEPT;
        }
    };

    Parts(SpringTemplateEngine engine, Words words) {
        this.engine = engine;
        this.words = words;
        engine.setLinkBuilder(new Rooted());
    }

    /**
     * A part of a page; made anew only if something that it shows is another.
     *
     * @param section fragment of the template
     * @param shows all that it shows, comparable by its content
     */
    public synchronized String of(String template, String section, Map<String, ?> shows) {
        List<Object> key = List.of(template, section, shows, LocalDate.now(words.zoneId()));
        String known = made.get(key);
        if (known != null) return known;
        Context context = new Context(Locale.ENGLISH);
        shows.forEach(context::setVariable);
        context.setVariable("words", words);
        String fresh = engine.process(new TemplateSpec(template, Set.of(section), TemplateMode.HTML, null), context)
                .strip();
        made.put(key, fresh);
        return fresh;
    }

    /** Without a request there is no context path to ask for; the service has none anyhow. */
    private static final class Rooted extends StandardLinkBuilder {
        @Override
        protected String computeContextPath(
                IExpressionContext context, String base, @Nullable Map<String, Object> parameters) {
            return context instanceof IWebContext ? super.computeContextPath(context, base, parameters) : "";
        }
    }
}
