package org.stook.app.desk;

import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;

/** Turns what goes wrong under {@code /api} into problem details (RFC 9457); pages have an error page. */
@RestControllerAdvice(annotations = RestController.class)
class Problems extends ResponseEntityExceptionHandler {}
