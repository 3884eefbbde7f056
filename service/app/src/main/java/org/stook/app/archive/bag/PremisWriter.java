package org.stook.app.archive.bag;

import java.io.ByteArrayOutputStream;
import java.util.List;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.jspecify.annotations.Nullable;

/** The building blocks of a PREMIS 3.0 document, each in the order of elements that its schema asks for. */
final class PremisWriter {
    private static final String NAMESPACE = "http://www.loc.gov/premis/v3";
    private static final String INSTANCE = "http://www.w3.org/2001/XMLSchema-instance";

    /** What of a file never changes. */
    record Fixed(String sha256, long bytes, String mediaType) {}

    private interface Writing {
        void write() throws XMLStreamException;
    }

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final XMLStreamWriter xml;

    PremisWriter() {
        try {
            xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(bytes, "UTF-8");
            xml.writeStartDocument("UTF-8", "1.0");
            xml.writeStartElement("premis");
            xml.writeDefaultNamespace(NAMESPACE);
            xml.writeNamespace("xsi", INSTANCE);
            xml.writeAttribute("version", "3.0");
        } catch (XMLStreamException e) {
            throw inMemory(e);
        }
    }

    byte[] finish() {
        quietly(() -> {
            xml.writeEndElement();
            xml.writeEndDocument();
            xml.close();
        });
        return bytes.toByteArray();
    }

    void object(String category, Runnable content) {
        quietly(() -> {
            xml.writeCharacters("\n");
            xml.writeStartElement("object");
            xml.writeAttribute("xsi", INSTANCE, "type", category);
            content.run();
            xml.writeEndElement();
        });
    }

    void event(String id, String type, String time, Runnable content) {
        quietly(() -> xml.writeCharacters("\n"));
        element("event", () -> {
            pair("eventIdentifier", "Stook event", id);
            text("eventType", type);
            text("eventDateTime", time);
            content.run();
        });
    }

    void agent(String name, String type, @Nullable String version) {
        quietly(() -> xml.writeCharacters("\n"));
        element("agent", () -> {
            pair("agentIdentifier", "Stook agent", name);
            text("agentName", name);
            text("agentType", type);
            if (version != null) text("agentVersion", version);
        });
    }

    void significant(String type, String value) {
        element("significantProperties", () -> {
            text("significantPropertiesType", type);
            text("significantPropertiesValue", value);
        });
    }

    /** @param version of Stook if it made the file, null if it did not */
    void characteristics(Fixed file, @Nullable String version) {
        element("objectCharacteristics", () -> {
            text("compositionLevel", "0");
            element("fixity", () -> {
                text("messageDigestAlgorithm", "SHA-256");
                text("messageDigest", file.sha256());
                text("messageDigestOriginator", "Stook");
            });
            text("size", Long.toString(file.bytes()));
            element("format", () -> element("formatDesignation", () -> text("formatName", file.mediaType())));
            if (version != null) {
                element("creatingApplication", () -> {
                    text("creatingApplicationName", "Stook");
                    text("creatingApplicationVersion", version);
                });
            }
        });
    }

    void storage(String type, String value) {
        element(
                "storage",
                () -> element("contentLocation", () -> {
                    text("contentLocationType", type);
                    text("contentLocationValue", value);
                }));
    }

    void relation(String type, String subtype, String identifierType, List<String> others) {
        if (others.isEmpty()) return;
        element("relationship", () -> {
            text("relationshipType", type);
            text("relationshipSubType", subtype);
            others.forEach(other -> pair("relatedObjectIdentifier", identifierType, other));
        });
    }

    void detail(String words) {
        element("eventDetailInformation", () -> text("eventDetail", words));
    }

    void outcome(String outcome, String note) {
        element("eventOutcomeInformation", () -> {
            text("eventOutcome", outcome);
            element("eventOutcomeDetail", () -> text("eventOutcomeDetailNote", note));
        });
    }

    void linkAgent(String name, String role) {
        element("linkingAgentIdentifier", () -> {
            text("linkingAgentIdentifierType", "Stook agent");
            text("linkingAgentIdentifierValue", name);
            text("linkingAgentRole", role);
        });
    }

    void linkObjects(String identifierType, List<String> values, String role) {
        values.forEach(value -> element("linkingObjectIdentifier", () -> {
            text("linkingObjectIdentifierType", identifierType);
            text("linkingObjectIdentifierValue", value);
            text("linkingObjectRole", role);
        }));
    }

    /** An identifier of a type and a value. */
    void pair(String name, String type, String value) {
        element(name, () -> {
            text(name + "Type", type);
            text(name + "Value", value);
        });
    }

    void text(String name, String text) {
        quietly(() -> {
            xml.writeStartElement(name);
            // What XML 1.0 cannot say at all, not even escaped.
            xml.writeCharacters(
                    text.replaceAll("[^\\x09\\x0A\\x0D\\x20-\\uD7FF\\uE000-\\uFFFD\\x{10000}-\\x{10FFFF}]", "?"));
            xml.writeEndElement();
        });
    }

    private void element(String name, Runnable content) {
        quietly(() -> {
            xml.writeStartElement(name);
            content.run();
            xml.writeEndElement();
        });
    }

    private static void quietly(Writing writing) {
        try {
            writing.write();
        } catch (XMLStreamException e) {
            throw inMemory(e);
        }
    }

    private static IllegalStateException inMemory(XMLStreamException e) {
        return new IllegalStateException("a document in memory cannot be written", e);
    }
}
