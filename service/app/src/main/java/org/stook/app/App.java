package org.stook.app;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.context.properties.ConfigurationPropertiesScan;
import org.springframework.scheduling.annotation.EnableScheduling;

/** The service. */
@SpringBootApplication
@ConfigurationPropertiesScan
@EnableScheduling
public class App {
    public static void main(String[] arguments) {
        SpringApplication.run(App.class, arguments);
    }
}
