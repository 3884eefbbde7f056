package org.stook.app.desk.live;

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
    private final SpringTemplateEngine engine;
    private final Words words;

    Parts(SpringTemplateEngine engine, Words words) {
        this.engine = engine;
        this.words = words;
        engine.setLinkBuilder(new Rooted());
    }

    /** @param sections fragments of the template, which are the names of the events as well */
    public Map<String, String> of(String template, List<String> sections, Map<String, ?> variables) {
        Context context = new Context(Locale.ENGLISH);
        variables.forEach(context::setVariable);
        context.setVariable("words", words);
        Map<String, String> made = new LinkedHashMap<>();
        for (String section : sections) {
            TemplateSpec spec = new TemplateSpec(template, Set.of(section), TemplateMode.HTML, null);
            made.put(section, engine.process(spec, context).strip());
        }
        return made;
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
