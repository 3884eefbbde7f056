package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.ErrorResponse;
import org.springframework.web.HttpRequestMethodNotSupportedException;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.servlet.resource.NoResourceFoundException;

/** Addresses and methods under {@code /api} that no controller has: there is none whose advice could tell it. */
@ControllerAdvice
class NoSuchVerb {
    @ExceptionHandler({NoResourceFoundException.class, HttpRequestMethodNotSupportedException.class})
    ResponseEntity<ProblemDetail> tell(Exception unknown, HttpServletRequest request) throws Exception {
        if (!request.getRequestURI().startsWith("/api/") || !(unknown instanceof ErrorResponse answer)) {
            throw unknown; // Pages have an error page.
        }
        return ResponseEntity.status(answer.getStatusCode())
                .headers(answer.getHeaders())
                .body(answer.getBody());
    }
}
