package org.stook.app.desk;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem.HttpMethod;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.IntegerSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.ObjectSchema;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import io.swagger.v3.oas.models.security.SecurityScheme;
import java.util.Optional;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The description of the API (OpenAPI 3.1), served at {@code /api/openapi.json}: what its methods cannot say of themselves. */
@Configuration(proxyBeanMethods = false)
class ApiDescription {
    private static final String PROBLEM = "Problem";
    private static final String PROBLEM_TYPE = "application/problem+json";
    private static final String BASIC = "basic";
    private static final String SESSION = "session";

    @Bean
    OpenAPI description() {
        String version = Optional.ofNullable(ApiDescription.class.getPackage().getImplementationVersion())
                .orElse("development");
        return new OpenAPI()
                .info(new Info()
                        .title("Stook")
                        .version(version)
                        .description(
                                "The same verbs as on the pages. What is refused is told as a problem detail (RFC 9457)."
                                        + " Times are in UTC (RFC 3339)."))
                .addSecurityItem(new SecurityRequirement().addList(BASIC))
                .addSecurityItem(new SecurityRequirement().addList(SESSION));
    }

    @Bean
    OpenApiCustomizer refusalsOfAll() {
        return api -> {
            api.getComponents()
                    .addSchemas(PROBLEM, problem())
                    .addSecuritySchemes(
                            BASIC,
                            new SecurityScheme().type(SecurityScheme.Type.HTTP).scheme("basic"))
                    .addSecuritySchemes(
                            SESSION,
                            new SecurityScheme()
                                    .type(SecurityScheme.Type.APIKEY)
                                    .in(SecurityScheme.In.COOKIE)
                                    .name("stook"));
            api.getPaths()
                    .forEach((path, item) ->
                            item.readOperationsMap().forEach((method, operation) -> refusals(path, method, operation)));
        };
    }

    private static void refusals(String path, HttpMethod method, Operation operation) {
        refusal(operation, "400", "What was said cannot be read.");
        refusal(operation, "401", "Nobody is signed in, or the password is wrong.");
        if (path.contains("{")) refusal(operation, "404", "There is no such thing.");
        if (path.endsWith(".tar") || path.endsWith("/files/{kind}")) ofFiles(operation);
        if (method != HttpMethod.GET) {
            refusal(operation, "403", "The role does not allow it, or the request comes from another site.");
            refusal(operation, "409", "It cannot be done as things stand.");
        }
        refusal(operation, "422", "Something that was said makes no sense; the detail names it.");
    }

    private static void ofFiles(Operation operation) {
        operation
                .getResponses()
                .addApiResponse("206", new ApiResponse().description("The range that was asked for (RFC 9110, 14)."))
                .addApiResponse("304", new ApiResponse().description("It is what the asker has (RFC 9110, 13)."));
        refusal(operation, "409", "It is not ready, or a file of it is damaged or out of reach.");
        refusal(operation, "416", "There is no such range in it.");
    }

    private static void refusal(Operation operation, String status, String meaning) {
        operation
                .getResponses()
                .addApiResponse(
                        status,
                        new ApiResponse()
                                .description(meaning)
                                .content(new Content()
                                        .addMediaType(
                                                PROBLEM_TYPE,
                                                new MediaType()
                                                        .schema(new Schema<>()
                                                                .$ref("#/components/schemas/" + PROBLEM)))));
    }

    private static Schema<?> problem() {
        return new ObjectSchema()
                .addProperty("type", new StringSchema().format("uri-reference"))
                .addProperty("title", new StringSchema())
                .addProperty("status", new IntegerSchema())
                .addProperty("detail", new StringSchema())
                .addProperty("instance", new StringSchema().format("uri-reference"));
    }
}
