package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.json.token.JsonTokens;
import org.isopter.model.finding.Answers;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;

/**
 * A place in a JSON document. Reading takes: what was understood counts as gone, so what remains at
 * the end is exactly what nobody understood.
 */
public final class ElementCursor {

  /** A concept, its list, its coding and system, code and display of that. */
  private static final int CODING = 6;

  private final JsonTokens json;
  private final int token;
  private final List<Fault> faults;

  private ElementCursor(JsonTokens json, int token, List<Fault> faults) {
    this.json = json;
    this.token = token;
    this.faults = faults;
  }

  /** Returns the root of a document; faults found below it are added to the list. */
  public static ElementCursor root(JsonTokens json, List<Fault> faults) {
    return new ElementCursor(json, JsonTokens.ROOT, faults);
  }

  /** Returns where this is, for instance {@code Bundle.entry[2].resource}. */
  public String path() {
    return json.path(token);
  }

  private int member(String name) {
    return json.member(token, name);
  }

  private ElementCursor at(int child) {
    return new ElementCursor(json, child, faults);
  }

  /** Says whether there is an element of that name that was not taken. */
  public boolean has(String name) {
    return member(name) != JsonTokens.NONE;
  }

  /** Returns a text without taking it. */
  public String peek(String name) {
    int child = member(name);
    return child != JsonTokens.NONE && json.isString(child) ? json.text(child) : "";
  }

  /** Returns the object of that name; what is read from it is taken. */
  public Optional<ElementCursor> object(String name) {
    int child = member(name);
    if (child == JsonTokens.NONE) {
      return Optional.empty();
    }
    if (json.isObject(child)) {
      return Optional.of(at(child));
    }
    fault(name, json.shown(child), "an object");
    return Optional.empty();
  }

  /** Returns the object of that name, or reports that it is missing. */
  public Optional<ElementCursor> required(String name) {
    require(name);
    return object(name);
  }

  /** Reports an element that is missing. */
  public void require(String name) {
    if (!has(name)) {
      fault(name, "nothing", "an element of that name");
    }
  }

  /** Returns the objects of the list of that name; none where there is no such list. */
  public List<ElementCursor> objects(String name) {
    int list = member(name);
    if (list == JsonTokens.NONE) {
      return List.of();
    }
    if (!json.isList(list)) {
      fault(name, json.shown(list), "a list");
      return List.of();
    }
    List<ElementCursor> objects = new ArrayList<>(4);
    int end = json.next(list);
    for (int item = list + 1; item < end; item = json.next(item)) {
      if (json.isObject(item)) {
        objects.add(at(item));
      } else {
        faults.add(Fault.of(json.path(item), json.shown(item), "an object"));
      }
    }
    return objects;
  }

  /** Takes an object or a list that is this JSON, byte for byte; says whether it is. */
  boolean takeWritten(String name, byte[] wanted) {
    int child = member(name);
    boolean written = child != JsonTokens.NONE && json.isJson(child, wanted);
    if (written) {
      json.take(child);
    }
    return written;
  }

  /** Takes the codings of a list that stand there byte for byte as they are written, in order. */
  boolean takeWritten(String name, List<Code> wanted) {
    int list = member(name);
    if (list == JsonTokens.NONE || !json.isList(list)) {
      return false;
    }
    int item = list + 1;
    for (Code code : wanted) {
      if (item >= json.next(list) || !json.isJson(item, WrittenJson.coding(code))) {
        return false;
      }
      item = json.next(item);
    }
    boolean all = item == json.next(list);
    if (all) {
      json.take(list);
    }
    return all;
  }

  /**
   * Takes a member that is the same text as one before of which nothing was left over.
   *
   * @param before where the one before stands; negative where there was none
   */
  boolean takeRepeated(String name, int before) {
    int child = member(name);
    boolean same = child != JsonTokens.NONE && before >= 0 && json.isSame(child, before);
    if (same) {
      json.take(child);
    }
    return same;
  }

  /** Returns where a member stands; negative where it is missing. */
  int place(String name) {
    return member(name);
  }

  /** Says whether nothing is left of what stands at a place, and no fault was added. */
  boolean isTaken(int place, int faultsBefore) {
    return faults.size() == faultsBefore && json.leaf(place, json.next(place)) == JsonTokens.NONE;
  }

  int faults() {
    return faults.size();
  }

  /** Takes a concept of one coding that stands there byte for byte as it is written. */
  Optional<Concept> takeWritten(String name, Answers answers) {
    int concept = member(name);
    if (concept == JsonTokens.NONE || json.next(concept) != concept + CODING) {
      return Optional.empty();
    }
    Optional<Concept> found = answers.byCode(json.text(concept + 3), json.text(concept + 4));
    return found.filter(one -> takeWritten(name, WrittenJson.concept(one.code())));
  }

  /** Returns the only object of a list, or reports how many there are. */
  public Optional<ElementCursor> only(String name) {
    List<ElementCursor> objects = objects(name);
    if (objects.size() == 1) {
      return Optional.of(objects.get(0));
    }
    fault(name, objects.size() + " of them", "exactly one");
    return Optional.empty();
  }

  /** Takes a text. */
  public Optional<String> text(String name) {
    int child = take(name, ElementForm.STRING);
    return child == JsonTokens.NONE ? Optional.empty() : Optional.of(json.text(child));
  }

  /** Takes a list of texts. */
  public List<String> texts(String name) {
    int list = take(name, ElementForm.LIST);
    if (list == JsonTokens.NONE) {
      return List.of();
    }
    List<String> texts = new ArrayList<>();
    for (int item = list + 1; item < json.next(list); item = json.next(item)) {
      texts.add(json.isString(item) ? json.text(item) : "");
    }
    return texts;
  }

  /** Takes a number, its digits as they are; one of too many digits is a fault. */
  public Optional<BigDecimal> number(String name) {
    int child = take(name, ElementForm.NUMBER);
    if (child == JsonTokens.NONE) {
      return Optional.empty();
    }
    BigDecimal number = new BigDecimal(json.text(child));
    if (!NumberLimit.holds(number)) {
      fault(name, number.toString(), "a number of few digits");
      return Optional.empty();
    }
    return Optional.of(number);
  }

  Optional<Integer> integer(String name) {
    int child = take(name, ElementForm.INTEGER);
    return child == JsonTokens.NONE
        ? Optional.empty()
        : Optional.of(new BigDecimal(json.text(child)).intValueExact());
  }

  Optional<Boolean> truth(String name) {
    int child = take(name, ElementForm.TRUTH);
    return child == JsonTokens.NONE
        ? Optional.empty()
        : Optional.of(Boolean.parseBoolean(json.text(child)));
  }

  /** Takes a text that must be there and be this one. */
  public void expect(String name, String wanted) {
    String quoted = "\"" + wanted + "\"";
    String seen = text(name).orElse("");
    if (!seen.equals(wanted)) {
      fault(name, seen.isEmpty() ? "nothing" : "\"" + seen + "\"", quoted);
    }
  }

  /** Takes what carries no finding and is known to be in order. */
  public void drop(String name) {
    int child = member(name);
    if (child != JsonTokens.NONE) {
      json.take(child);
    }
  }

  /** Takes a text that carries no finding; reports one of another shape. */
  public void drop(String name, PrimitiveForm shape) {
    shaped(name, shape);
  }

  /** Takes a text; reports one of another shape. */
  public Optional<String> shaped(String name, PrimitiveForm shape) {
    Optional<String> text = text(name);
    text.filter(seen -> !shape.fits(seen))
        .ifPresent(seen -> fault(name, "\"" + seen + "\"", shape.wanted()));
    return text;
  }

  /** Takes everything that is left here without reading it. */
  public void abandon() {
    for (int child = token + 1; child < json.next(token); child = json.next(child)) {
      json.take(child);
    }
  }

  /** Notes a fault of an element, or of this one where the name is empty. */
  public void fault(String name, String seen, String wanted) {
    faults.add(Fault.of(name.isEmpty() ? path() : path() + "." + name, seen, wanted));
  }

  /** Notes a fault. */
  public void fault(Fault fault) {
    faults.add(fault);
  }

  /** Reports everything that was not taken. */
  public void reportRest() {
    int end = json.next(token);
    for (int leaf = json.leaf(token, end);
        leaf != JsonTokens.NONE;
        leaf = json.leaf(leaf + 1, end)) {
      faults.add(Fault.of(json.path(leaf), json.shown(leaf), "no such element here"));
    }
  }

  private int take(String name, ElementForm form) {
    int child = member(name);
    if (child == JsonTokens.NONE) {
      return JsonTokens.NONE;
    }
    json.take(child);
    if (!form.fits(json, child)) {
      fault(name, json.shown(child), form.wanted());
      return JsonTokens.NONE;
    }
    return child;
  }

  /** Two cursors at one place of one document are the same. */
  @Override
  public boolean equals(Object other) {
    return other instanceof ElementCursor that && token == that.token && json == that.json;
  }

  @Override
  public int hashCode() {
    return token;
  }
}
