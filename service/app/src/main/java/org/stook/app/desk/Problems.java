package org.stook.app.desk;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;

/** Turns what goes wrong under {@code /api} into problem details (RFC 9457); pages have an error page. */
@RestControllerAdvice(annotations = RestController.class)
class Problems extends ResponseEntityExceptionHandler {
    private static final Logger LOG = LoggerFactory.getLogger(Problems.class);

    /** What nobody thought of is told to the log only. */
    @ExceptionHandler(RuntimeException.class)
    ProblemDetail fault(RuntimeException fault) {
        LOG.error("a question to the API could not be answered", fault);
        return ProblemDetail.forStatusAndDetail(
                HttpStatus.INTERNAL_SERVER_ERROR, "Something went wrong in the service; its log says what.");
    }
}
