package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.parameters.Parameter;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.stook.app.testing.Caller;

/** The API over a real port: what it answers, how it refuses, and that its description is true. */
class ApiTest extends DeskStage {
    @Test
    void theApiAnswersInJsonAndRefusesWithProblemDetails() {
        assertThat(get("/api/stacks/1").body()).contains("\"subject\":\"Banded agate\"", "\"verdict\":\"ACCEPT\"");
        assertThat(get("/api/publications").body()).contains("\"runId\":1");
        HttpResponse<String> none = get("/api/runs/99");
        assertThat(none.statusCode()).isEqualTo(404);
        assertThat(none.headers().firstValue("Content-Type")).contains("application/problem+json");
        assertThat(none.body()).contains("\"detail\":\"there is no run 99\"");
        assertThat(post("/api/runs/1/hold").statusCode()).isEqualTo(409);
    }

    @Test
    void oneOrderForManyRunsIsAnEntryForEachAndSaysWhichRefused() {
        String answer = post("/api/runs", "{\"run\": [2, 1, 99], \"order\": \"hold\"}");
        assertThat(answer).contains("\"done\":[2]", "run 1 is published", "there is no run 99");
        assertThat(get("/api/runs?state=held").body())
                .contains("Balance wheel 12")
                .doesNotContain("Fluorite");
        assertThat(get("/?person=true").body()).contains("Balance wheel 12", "Fluorite", "Runs that were asked for");
        assertThat(get("/?priority=lots").body()).contains("priority: found &#39;lots&#39;, expected a whole number");
        assertThat(post("/api/runs", "{\"run\": [2], \"order\": \"priority\", \"priority\": 70}"))
                .contains("[2]");
        assertThat(get("/api/runs/2").body()).contains("\"priority\":70");
        HttpResponse<String> released = form("/runs", "run=2&order=release&back=%2F%2Felsewhere.example");
        assertThat(released.headers().firstValue("Location").orElse("")).endsWith(":" + port + "/");
        assertThat(jdbc.sql("select kind from stook.audit_entry where subject = 'run/2' order by id desc limit 3")
                        .query(String.class)
                        .list())
                .containsExactly("run.HELD-READY", "run.PRIORITY", "run.READY-HELD");
        assertThat(get("/api/runs?text=WHEEL&priority=60&from=2026-01-01").body())
                .contains("Balance wheel 12");
        assertThat(get("/api/runs?table=true&state=any&text=wheel").body()).contains("\"runs\":[");
        post("/api/runs", "{\"run\": [2], \"order\": \"priority\", \"priority\": 50}");
    }

    /** Judged by a parser of the OpenAPI project's own making, against what the service itself answers to. */
    @Test
    void theApiIsDescribedAsItIs(
            @Autowired @Qualifier("requestMappingHandlerMapping") RequestMappingHandlerMapping all) {
        String description = get("/api/openapi.json").body();
        SwaggerParseResult read = new OpenAPIV3Parser().readContents(description);
        assertThat(read.getMessages()).isEmpty();
        assertThat(read.getOpenAPI().getOpenapi()).startsWith("3.1");
        Set<String> described = new TreeSet<>();
        read.getOpenAPI()
                .getPaths()
                .forEach((path, item) ->
                        item.readOperationsMap().forEach((method, operation) -> described.add(method + " " + path)));
        Set<String> answered = new TreeSet<>();
        all.getHandlerMethods()
                .keySet()
                .forEach(mapping -> mapping.getPatternValues().stream()
                        .filter(path -> path.startsWith("/api/") && !path.startsWith("/api/openapi"))
                        .forEach(path -> mapping.getMethodsCondition()
                                .getMethods()
                                .forEach(method -> answered.add(method + " " + path))));
        assertThat(described).isEqualTo(answered).hasSizeGreaterThan(40);
    }

    /**
     * Every verb of the description is asked once: whatever looks, about something that is there, whatever changes, about something
     * that is not. Each answer has to be one that the description names, and each refusal a problem detail (RFC 9457).
     */
    @Test
    void everyVerbAnswersAsItIsDescribed() {
        List<String> untrue = new ArrayList<>();
        new OpenAPIV3Parser()
                .readContents(get("/api/openapi.json").body())
                .getOpenAPI()
                .getPaths()
                .forEach((path, item) -> item.readOperationsMap().forEach((method, operation) -> {
                    HttpResponse<String> answer = ask(method.name(), asked(method.name(), path, operation));
                    String status = Integer.toString(answer.statusCode());
                    if (!operation.getResponses().containsKey(status) || answer.statusCode() >= 500) {
                        untrue.add(method + " " + path + ": " + status + " " + answer.body());
                    }
                    if (answer.statusCode() >= 400) isAProblem(answer);
                }));
        assertThat(untrue).isEmpty();
    }

    private HttpResponse<String> ask(String method, String address) {
        Caller ada = new Caller(port, "ada");
        return ada.send(ada.request(address)
                .header("Content-Type", "application/json")
                .method(method, HttpRequest.BodyPublishers.ofString(method.equals("GET") ? "" : "{}")));
    }

    private static void isAProblem(HttpResponse<String> refused) {
        assertThat(refused.headers().firstValue("Content-Type").orElse("")).startsWith("application/problem+json");
        assertThat(refused.body()).contains("\"status\":" + refused.statusCode(), "\"title\":", "\"detail\":");
    }

    /** The path with its variables filled in, and with all that has to be asked along. */
    private String asked(String method, String path, Operation operation) {
        String there = path.replace("{name}", path.startsWith("/api/stations") ? "north" : "monday")
                .replace("{sha256}", "ab".repeat(32))
                .replace("{kind}", "record")
                .replace("{verb}", "hold")
                .replaceAll("\\{(id|run)}", path.startsWith("/api/tones") ? "cd".repeat(32) : "1");
        String absent = path.replace("{verb}", "hold").replaceAll("\\{\\w+}", "9999");
        StringBuilder address = new StringBuilder(method.equals("GET") ? there : absent).append('?');
        List<Parameter> parameters = operation.getParameters() == null ? List.of() : operation.getParameters();
        for (Parameter parameter : parameters) {
            if ("query".equals(parameter.getIn()) && Boolean.TRUE.equals(parameter.getRequired())) {
                address.append(parameter.getName()).append("=1&");
            }
        }
        return address.toString();
    }

    @Test
    void whatNobodyThoughtOfIsToldToTheLogAloneAndIsAProblemDetailStill() throws Exception {
        MockMvcBuilders.standaloneSetup(new Faulty())
                .setControllerAdvice(new Problems())
                .build()
                .perform(MockMvcRequestBuilders.get("/api/faulty"))
                .andExpect(status().isInternalServerError())
                .andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON))
                .andExpect(jsonPath("$.status").value(500))
                .andExpect(jsonPath("$.title").value("Internal Server Error"))
                .andExpect(content().string(not(containsString("a secret"))));
    }

    @RestController
    static final class Faulty {
        @GetMapping("/api/faulty")
        String fails() {
            throw new IllegalStateException("a secret of the database");
        }
    }

    /** RFC 9457, section 3: status, title and detail; one of each kind of refusal. */
    @ParameterizedTest
    @CsvSource({
        "GET, /api/runs/1, nobody, , 401",
        "POST, /api/runs/2/hold, pim, , 403",
        "GET, /api/people, olga, , 403",
        "GET, /api/stacks/99, olga, , 404",
        "GET, /api/nowhere, olga, , 404",
        "POST, /api/runs/2/fly, olga, , 404",
        "DELETE, /api/runs/1, olga, , 405",
        "POST, /api/runs/1/hold, olga, , 409",
        "POST, /api/runs, olga, {nonsense, 400",
        "GET, /api/runs/many, olga, , 400",
        "GET, /api/runs?from=soon, olga, , 422",
        "POST, /api/people, ada, {'name':'x'}, 422",
    })
    void whatIsRefusedIsAProblemDetail(String method, String path, String who, @Nullable String body, int status) {
        HttpResponse<String> refused = new Caller(port, who)
                .send(new Caller(port, who)
                        .request(path)
                        .header("Content-Type", "application/json")
                        .method(
                                method,
                                body == null
                                        ? HttpRequest.BodyPublishers.noBody()
                                        : HttpRequest.BodyPublishers.ofString(body.replace("'", "\""))));
        assertThat(refused.statusCode()).as(refused.body()).isEqualTo(status);
        isAProblem(refused);
    }

    @Test
    void peopleAreLetInByApi() {
        Caller ada = new Caller(port, "ada");
        HttpResponse<String> added = ada.send(ada.request("/api/people")
                .POST(HttpRequest.BodyPublishers.ofString("{\"name\": \"Mira\", \"roles\": [\"photographer\"]}"))
                .header("Content-Type", "application/json"));
        assertThat(added.statusCode()).isEqualTo(201);
        assertThat(added.body()).contains("\"code\":\"", "\"name\":\"Mira\"");
        long id = jdbc.sql("select id from stook.person where name = 'Mira'")
                .query(Long.class)
                .single();
        HttpResponse<String> changed = ada.send(ada.request("/api/people/" + id)
                .PUT(HttpRequest.BodyPublishers.ofString("{\"roles\": [\"archivist\"], \"active\": false}"))
                .header("Content-Type", "application/json"));
        assertThat(changed.body()).contains("ARCHIVIST", "\"active\":false");
        assertThat(ada.get("/api/people").body()).contains("Mira").doesNotContain("bcrypt");
    }
}
