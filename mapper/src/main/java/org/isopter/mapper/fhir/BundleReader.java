package org.isopter.mapper.fhir;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.fhir.element.ElementCursor;
import org.isopter.mapper.fhir.element.Ids;
import org.isopter.mapper.fhir.element.PrimitiveForm;
import org.isopter.mapper.fhir.element.Transport;
import org.isopter.mapper.json.token.JsonTokens;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.value.Code;
import org.isopter.model.value.Fault;

/** Takes one bundle as one examination. */
final class BundleReader {

  private static final List<String> TYPES =
      List.of("Observation", "DiagnosticReport", "Provenance", "Composition");

  private final Catalogue catalogue;
  private final ElementCursor bundle;
  private final List<Fault> faults;
  private final Map<String, ElementCursor> byUrl = new LinkedHashMap<>();
  private final Map<String, List<ElementCursor>> byType = new HashMap<>();
  private final Map<ElementCursor, FactKey> names = new HashMap<>();

  BundleReader(Catalogue catalogue, JsonTokens bundle, List<Fault> faults) {
    this.catalogue = catalogue;
    this.faults = faults;
    this.bundle = ElementCursor.root(bundle, faults);
  }

  /** Takes the examination; empty when a fault was reported. */
  Optional<Exam> read() {
    if (!bundle.peek("resourceType").equals("Bundle")) {
      String type = bundle.peek("resourceType");
      String seen = type.isEmpty() ? "nothing" : "\"" + type + "\"";
      bundle.fault("resourceType", seen, "\"Bundle\"");
      return Optional.empty();
    }
    Transport.document(bundle);
    bundle.objects("entry").forEach(this::entry);
    for (ElementCursor resource : byUrl.values()) {
      byType.computeIfAbsent(resource.peek("resourceType"), any -> new ArrayList<>()).add(resource);
    }
    List<ElementCursor> panels = of("Observation").stream().filter(BundleReader::isPanel).toList();
    if (panels.size() != 1) {
      bundle.fault(
          "entry", panels.size() + " panel observations " + ExamCodes.PANEL.token(), "exactly one");
      return Optional.empty();
    }
    return exam(panels.get(0));
  }

  private Optional<Exam> exam(ElementCursor panel) {
    Optional<Identifier> amends =
        of("Provenance").stream()
            .map(FrameReader::provenance)
            .flatMap(Optional::stream)
            .findFirst();
    Optional<Header> header = new PanelDraft(panel).header(amends);
    if (header.isEmpty()) {
      return Optional.empty();
    }
    FrameReader.bundle(bundle, header.get());
    of("DiagnosticReport").forEach(report -> FrameReader.report(report, header.get()));
    of("Composition").forEach(document -> FrameReader.composition(document, header.get()));
    Optional<Exam> exam = facts(panel, header.get()).map(facts -> new Exam(header.get(), facts));
    references();
    derived(exam);
    exam.ifPresent(
        read -> of("DiagnosticReport").forEach(report -> FrameReader.conclusion(report, read)));
    bundle.reportRest();
    return exam;
  }

  private Optional<List<Fact<?>>> facts(ElementCursor panel, Header header) {
    ObservationReader reader = new ObservationReader(catalogue, header);
    List<Fact<?>> facts = new ArrayList<>();
    List<ElementCursor> read = new ArrayList<>();
    for (ElementCursor member : panel.objects("hasMember")) {
      Optional<ElementCursor> observation = resolve(member);
      if (observation.flatMap(reader::read).map(facts::add).isPresent()) {
        read.add(observation.get());
      } else {
        // What was not read because of a fault is no further fault.
        observation.ifPresent(ElementCursor::abandon);
      }
    }
    if (!faults.isEmpty()) {
      // A fact's name depends on its neighbours: with one missing, none can be checked.
      read.forEach(observation -> observation.drop("identifier"));
      return Optional.empty();
    }
    List<FactKey> keys = FactKey.of(facts);
    checkIdentifiers(read, keys, Ids.of(header.id()));
    for (int i = 0; i < read.size(); i++) {
      names.put(read.get(i), keys.get(i));
    }
    return Optional.of(facts);
  }

  private static void checkIdentifiers(List<ElementCursor> read, List<FactKey> keys, Ids ids) {
    for (int i = 0; i < read.size(); i++) {
      String wanted = ids.fact(keys.get(i));
      read.get(i)
          .only("identifier")
          .ifPresent(
              identifier -> {
                identifier.expect("system", ids.system());
                identifier.expect("value", wanted);
              });
    }
  }

  private void entry(ElementCursor entry) {
    String url = entry.shaped("fullUrl", PrimitiveForm.FULL_URL).orElse("");
    Transport.entry(entry, bundle.peek("type"));
    entry
        .required("resource")
        .ifPresent(
            resource -> {
              String type = resource.peek("resourceType");
              if (!TYPES.contains(type)) {
                resource.fault("resourceType", "\"" + type + "\"", "one of " + TYPES);
              }
              ElementCursor other = byUrl.put(url, resource);
              if (url.isEmpty() || other != null) {
                entry.fault("fullUrl", "\"" + url + "\"", "a URL of its own for each entry");
              }
            });
  }

  /** Takes the references between the resources; each must lead to a resource of the bundle. */
  private void references() {
    for (ElementCursor report : of("DiagnosticReport")) {
      report.objects("result").forEach(this::resolve);
    }
    for (ElementCursor provenance : of("Provenance")) {
      provenance.objects("target").forEach(this::resolve);
    }
    for (ElementCursor composition : of("Composition")) {
      composition.objects("section").stream()
          .flatMap(section -> section.objects("entry").stream())
          .forEach(this::resolve);
    }
  }

  /** Takes the derived statements; without the facts there is nothing to compare them with. */
  private void derived(Optional<Exam> exam) {
    List<ElementCursor> statements =
        of("Observation").stream().filter(one -> hasCode(one, ExamCodes.DERIVED)).toList();
    if (exam.isEmpty()) {
      statements.forEach(ElementCursor::abandon);
    } else if (!statements.isEmpty()) {
      statements.forEach(new DerivedReader(exam.get(), names, this::resolve)::check);
    }
  }

  private Optional<ElementCursor> resolve(ElementCursor reference) {
    String url = reference.text("reference").orElse("");
    Optional<ElementCursor> resource = Optional.ofNullable(byUrl.get(url)).or(() -> stored(url));
    if (resource.isEmpty()) {
      reference.fault("reference", "\"" + url + "\"", "the fullUrl of an entry of this bundle");
    }
    return resource;
  }

  /** A server that stored the bundle rewrites its references to Type/id. */
  private Optional<ElementCursor> stored(String url) {
    return byUrl.entrySet().stream()
        .filter(entry -> !url.isEmpty() && entry.getKey().endsWith("/" + url))
        .map(Map.Entry::getValue)
        .findFirst();
  }

  private List<ElementCursor> of(String type) {
    return byType.getOrDefault(type, List.of());
  }

  private static boolean isPanel(ElementCursor resource) {
    return hasCode(resource, ExamCodes.PANEL);
  }

  private static boolean hasCode(ElementCursor resource, Code wanted) {
    return resource.object("code").map(code -> code.objects("coding")).orElse(List.of()).stream()
        .anyMatch(
            coding ->
                coding.peek("system").equals(wanted.system())
                    && coding.peek("code").equals(wanted.code()));
  }
}
