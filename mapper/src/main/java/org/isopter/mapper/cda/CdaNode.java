package org.isopter.mapper.cda;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * An element of a clinical document.
 *
 * @param element the element
 */
record CdaNode(Element element) {

  private static final String HL7 = "urn:hl7-org:v3";
  private static final String EXTENSIONS = "urn:hl7-org:sdtc";
  private static final String TYPES = "http://www.w3.org/2001/XMLSchema-instance";

  /** Returns its name; empty for one of another vocabulary. */
  String name() {
    return HL7.equals(element.getNamespaceURI()) ? String.valueOf(element.getLocalName()) : "";
  }

  /** Returns an attribute that is there and not empty. */
  Optional<String> attribute(String name) {
    return Optional.of(element.getAttribute(name)).filter(text -> !text.isEmpty());
  }

  /** Says whether an attribute is there with a value. */
  boolean has(String name, String value) {
    return attribute(name).equals(Optional.of(value));
  }

  /** Returns the type that a value says it has, without its prefix. */
  String type() {
    String type = element.getAttributeNS(TYPES, "type");
    return type.substring(type.indexOf(':') + 1);
  }

  /** Returns the elements in it. */
  List<CdaNode> children() {
    List<CdaNode> children = new ArrayList<>();
    NodeList nodes = element.getChildNodes();
    for (int i = 0; i < nodes.getLength(); i++) {
      if (nodes.item(i) instanceof Element child) {
        children.add(new CdaNode(child));
      }
    }
    return children;
  }

  /** Returns the elements of that name in it. */
  List<CdaNode> all(String name) {
    return children().stream().filter(child -> child.name().equals(name)).toList();
  }

  /** Returns the first element of that name in it. */
  Optional<CdaNode> first(String name) {
    return all(name).stream().findFirst();
  }

  /** Returns all text in it, blanks folded. */
  String text() {
    Node node = element;
    return String.valueOf(node.getTextContent()).replaceAll("\\s+", " ").strip();
  }

  /** Says whether its status takes it back: it was cancelled, stopped or made void. */
  boolean isTakenBack() {
    return all("statusCode").stream()
        .flatMap(status -> status.attribute("code").stream())
        .anyMatch(code -> !code.equals("completed") && !code.equals("active"));
  }

  /** Returns a value of an extension of HL7's of that name in it; empty where there is none. */
  Optional<String> extended(String name) {
    return children().stream()
        .filter(child -> EXTENSIONS.equals(child.element().getNamespaceURI()))
        .filter(child -> name.equals(child.element().getLocalName()))
        .flatMap(child -> child.attribute("value").stream())
        .findFirst();
  }

  /** Says whether it tells of something done: it is not empty, denied, planned or asked for. */
  boolean isOfSomethingDone() {
    return attribute("nullFlavor").isEmpty()
        && attribute("negationInd").filter(no -> !no.equals("false")).isEmpty()
        && attribute("moodCode").filter(mood -> !mood.equals("EVN")).isEmpty();
  }
}
