package org.stook.imaging.codec;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * An {@link Origin} as an XMP packet (ISO 16684-1; Dublin Core and XMP basic names from memory). IPTC's digital source type
 * says what kind of picture it is: {@code computationalCapture} is "multi-frame computational capture sampled from real
 * life" (IPTC NewsCodes, 2024-09-17), {@code digitalCapture} one frame alone.
 */
final class XmpPacket {
    private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
    private static final String DC = "http://purl.org/dc/elements/1.1/";
    private static final String XMP = "http://ns.adobe.com/xap/1.0/";
    private static final String IPTC = "http://iptc.org/std/Iptc4xmpExt/2008-02-29/";
    private static final String OURS = "urn:stook:picture:1.0/";
    private static final String SOURCE_TYPE = "http://cv.iptc.org/newscodes/digitalsourcetype/";

    private final XMLStreamWriter xml;

    private XmpPacket(XMLStreamWriter xml) {
        this.xml = xml;
    }

    /** @param format media type of the file it goes into */
    static byte[] of(Origin origin, String format) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        bytes.writeBytes(
                "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n".getBytes(StandardCharsets.UTF_8));
        try {
            XMLStreamWriter writer = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(bytes, "UTF-8");
            new XmpPacket(writer).write(origin, format);
            writer.close();
        } catch (XMLStreamException e) {
            throw new IllegalStateException("a packet in memory cannot be written", e);
        }
        bytes.writeBytes("\n<?xpacket end=\"r\"?>".getBytes(StandardCharsets.US_ASCII));
        return bytes.toByteArray();
    }

    private void write(Origin origin, String format) throws XMLStreamException {
        xml.setPrefix("x", "adobe:ns:meta/");
        xml.writeStartElement("x", "xmpmeta", "adobe:ns:meta/");
        xml.writeNamespace("x", "adobe:ns:meta/");
        xml.writeStartElement("rdf", "RDF", RDF);
        xml.writeNamespace("rdf", RDF);
        xml.writeStartElement("rdf", "Description", RDF);
        xml.writeNamespace("dc", DC);
        xml.writeNamespace("xmp", XMP);
        xml.writeNamespace("Iptc4xmpExt", IPTC);
        xml.writeNamespace("stook", OURS);
        xml.writeAttribute("rdf", RDF, "about", "");
        properties(origin, format);
        xml.writeEndElement();
        xml.writeEndElement();
        xml.writeEndElement();
        xml.flush();
    }

    private void properties(Origin origin, String format) throws XMLStreamException {
        simple("dc", DC, "format", format);
        list("title", "Alt", origin.caption().title());
        list("creator", "Seq", origin.caption().creator());
        list("rights", "Alt", origin.caption().rights());
        if (!origin.software().isEmpty()) simple("xmp", XMP, "CreatorTool", origin.software());
        String kind = origin.composite().isPresent() ? "computationalCapture" : "digitalCapture";
        simple("Iptc4xmpExt", IPTC, "DigitalSourceType", SOURCE_TYPE + kind);
        if (origin.caption().pixelSize().isPresent()) {
            double micrometres = origin.caption().pixelSize().getAsDouble();
            simple("stook", OURS, "PixelSizeMicrometres", Double.toString(micrometres));
        }
    }

    private void simple(String prefix, String namespace, String name, String value) throws XMLStreamException {
        xml.writeStartElement(prefix, name, namespace);
        xml.writeCharacters(value);
        xml.writeEndElement();
    }

    private void list(String name, String kind, Optional<String> value) throws XMLStreamException {
        if (value.isEmpty()) return;
        xml.writeStartElement("dc", name, DC);
        xml.writeStartElement("rdf", kind, RDF);
        xml.writeStartElement("rdf", "li", RDF);
        if (kind.equals("Alt")) xml.writeAttribute("xml:lang", "x-default");
        xml.writeCharacters(value.get().replaceAll("[^\\P{Cntrl}\\n\\t]", " "));
        xml.writeEndElement();
        xml.writeEndElement();
        xml.writeEndElement();
    }
}
