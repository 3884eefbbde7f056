package org.stook.app.signin;

import java.net.InetAddress;
import org.apache.catalina.LifecycleException;
import org.apache.catalina.connector.Connector;
import org.apache.coyote.AbstractProtocol;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.tomcat.ConfigurableTomcatWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.DependsOn;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.stook.app.people.People;

/**
 * Listens on loopback alone until there is an administrator, whatever {@code server.address} says, and then where it says.
 * In a container nobody could reach that; {@code stook.open-before-setup=true} is for there, where the container host decides
 * who gets through.
 */
@Component
@DependsOn("migrated")
class Listening implements WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> {
    private static final Logger LOG = LoggerFactory.getLogger(Listening.class);

    private record Held(Connector connector, @Nullable InetAddress configured) {}

    private final People people;
    private final boolean open;
    private @Nullable Held held;
    private boolean seen;

    Listening(People people, @Value("${stook.open-before-setup:false}") boolean open) {
        this.people = people;
        this.open = open;
    }

    @Override
    public void customize(ConfigurableTomcatWebServerFactory factory) {
        if (!open && !people.administered()) {
            factory.addConnectorCustomizers(this::hold);
        }
    }

    private synchronized void hold(Connector connector) {
        if (connector.getProtocolHandler() instanceof AbstractProtocol<?> protocol) {
            InetAddress configured = protocol.getAddress();
            if (configured == null || !configured.isLoopbackAddress()) {
                protocol.setAddress(InetAddress.getLoopbackAddress());
                held = new Held(connector, configured);
                LOG.warn("Listening on this machine only until there is an administrator.");
            }
        }
    }

    /**
     * Opens once there is an administrator, made here or by another service of the same database. One look later than it is
     * seen: whoever became the administrator must have had the answer, for open connections are cut.
     */
    @Scheduled(fixedDelay = 1000)
    synchronized void look() {
        Held now = held;
        if (now == null || now.connector().getLocalPort() <= 0 || !people.administered()) {
            return;
        }
        if (!seen) {
            seen = true;
            return;
        }
        held = null;
        try {
            move(now);
            LOG.info(
                    "There is an administrator: listening on {} from now on.",
                    now.configured() == null
                            ? "all addresses"
                            : now.configured().getHostAddress());
        } catch (LifecycleException e) {
            LOG.error("Cannot listen where configured; restart the service.", e);
        }
    }

    private static void move(Held held) throws LifecycleException {
        Connector connector = held.connector();
        connector.setPort(connector.getLocalPort()); // The same one, also if any free one was asked for.
        connector.pause();
        connector.stop();
        if (connector.getProtocolHandler() instanceof AbstractProtocol<?> protocol) {
            protocol.setAddress(held.configured());
        }
        connector.start();
    }
}
