package org.isopter.mapper.cda;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.w3c.dom.Element;
import org.xml.sax.ErrorHandler;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;

/**
 * Reads a clinical document (HL7 CDA R2) as a bundle of FHIR observations: one for each measurement
 * in it, and the whole document beside them, so that nothing of it is lost. External entities and
 * document types are refused.
 */
public final class CdaReader {

  private static final int DEEPEST = 200;

  private CdaReader() {}

  /** Says whether a document is a clinical document, by the name of its first element. */
  public static boolean isCda(byte[] xml) {
    String head = new String(xml, 0, Math.min(xml.length, 4096), UTF_8);
    return head.replaceAll("(?s)<!--.*?-->|<\\?.*?\\?>", "")
        .strip()
        .matches("(?s)\\uFEFF?\\s*(?:<!DOCTYPE.*)?<(?:\\w+:)?ClinicalDocument[\\s>].*");
  }

  /** Returns the bundle, or why the document cannot be read. */
  public static Result<Raw> read(byte[] xml) {
    try {
      Element root = builder().parse(new ByteArrayInputStream(xml)).getDocumentElement();
      CdaNode document = new CdaNode(root);
      return document.name().equals("ClinicalDocument")
          ? Result.ok(bundle(document, xml))
          : Result.refused(Fault.of("", "another document", "a ClinicalDocument of HL7 CDA R2"));
    } catch (SAXParseException broken) {
      String place = "line " + broken.getLineNumber() + ", column " + broken.getColumnNumber();
      return Result.refused(
          Fault.of(place, "what is no XML, or a document type", "XML without a document type"));
    } catch (SAXException | IOException broken) {
      return Result.refused(Fault.of("", "what is no XML", "XML without a document type"));
    }
  }

  private static DocumentBuilder builder() {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
      factory.setNamespaceAware(true);
      factory.setXIncludeAware(false);
      factory.setExpandEntityReferences(false);
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_DTD, "");
      factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
      factory.setAttribute(
          "http://www.oracle.com/xml/jaxp/properties/maxElementDepth", String.valueOf(DEEPEST));
      DocumentBuilder builder = factory.newDocumentBuilder();
      builder.setErrorHandler(new Strict());
      return builder;
    } catch (ParserConfigurationException impossible) {
      throw new IllegalStateException("every Java reads XML", impossible);
    }
  }

  /** Takes every fault for what it is, and prints nothing. */
  private static final class Strict implements ErrorHandler {
    @Override
    public void warning(SAXParseException fault) throws SAXException {
      throw fault;
    }

    @Override
    public void error(SAXParseException fault) throws SAXException {
      throw fault;
    }

    @Override
    public void fatalError(SAXParseException fault) throws SAXException {
      throw fault;
    }
  }

  private static Raw bundle(CdaNode document, byte[] xml) {
    Optional<Raw.Obj> subject = subject(document);
    List<Raw> entries = new ArrayList<>();
    CdaPeople people = CdaPeople.of(document);
    CdaOrganizer organizer = new CdaOrganizer(subject, CdaNarrative.of(document), people);
    document
        .all("component")
        .forEach(body -> collect(body, organizer, CdaContext.of(document, people), entries));
    Map<String, Raw> whole = new java.util.LinkedHashMap<>();
    whole.put("resourceType", Raw.of("Binary"));
    whole.put("contentType", Raw.of("application/xml"));
    whole.put("data", Raw.of(Base64.getEncoder().encodeToString(xml)));
    entries.add(entry(new Raw.Obj(whole)));
    Map<String, Raw> bundle = new java.util.LinkedHashMap<>();
    bundle.put("resourceType", Raw.of("Bundle"));
    bundle.put("type", Raw.of("collection"));
    bundle.put("entry", Raw.of(entries));
    return new Raw.Obj(bundle);
  }

  private static Raw.Obj entry(Raw.Obj resource) {
    return new Raw.Obj(Map.of("resource", resource));
  }

  /** An organizer says something of all that is in it, so that it is read as one. */
  private static void collect(
      CdaNode at, CdaOrganizer organizer, CdaContext context, List<Raw> entries) {
    for (CdaNode child : at.children()) {
      CdaContext inside = context.in(child, organizer.people());
      List<Raw.Obj> found = List.of();
      if (child.name().equals("organizer")) {
        found = organizer.read(child);
      } else if (child.name().equals("observation") && at.name().equals("entry")) {
        found = List.of(organizer.single(child));
      } else if (!child.name().equals("text")) {
        collect(child, organizer, inside, entries);
      }
      found.forEach(one -> entries.add(entry(inside.around(one))));
    }
  }

  /** Returns whom the document is about; nobody where it names several, or none. */
  private static Optional<Raw.Obj> subject(CdaNode document) {
    List<CdaNode> ids =
        document.all("recordTarget").stream()
            .flatMap(target -> target.all("patientRole").stream())
            .flatMap(role -> role.all("id").stream())
            .toList();
    boolean one = document.all("recordTarget").size() == 1;
    return ids.stream()
        .filter(id -> one && id.attribute("extension").isPresent())
        .findFirst()
        .map(CdaValue::identifier)
        .map(identifier -> new Raw.Obj(Map.of("identifier", identifier)));
  }
}
