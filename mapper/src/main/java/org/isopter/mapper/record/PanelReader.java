package org.isopter.mapper.record;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.isopter.mapper.record.tree.Complaints;
import org.isopter.mapper.record.tree.Node;
import org.isopter.mapper.record.tree.TextPlace;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Decoded;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;

/**
 * Reads the value of an entry with its parts, as the layout of the finding says.
 *
 * @param <V> the type of the value
 */
final class PanelReader<V> {

  private final Layout<V> layout;
  private final TextPlace place;
  private final Map<String, Node.Member> members;
  private final Scalars scalars;
  private final Complaints complaints;
  private final Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();
  private final Set<String> unread = new HashSet<>();

  PanelReader(
      Layout<V> layout,
      TextPlace place,
      Map<String, Node.Member> members,
      Scalars scalars,
      Complaints complaints) {
    this.layout = layout;
    this.place = place;
    this.members = members;
    this.scalars = scalars;
    this.complaints = complaints;
  }

  /** Returns the value, or nothing after a complaint. */
  Optional<Decoded<V>> read() {
    layout.commonParts().forEach(this::readPart);
    EncodedValue panel = readValue();
    if (!unread.isEmpty()) {
      checkTheRest(panel);
      return Optional.empty();
    }
    Result<Decoded<V>> result = layout.read(panel);
    result.faults().forEach(this::complain);
    return result instanceof Result.Ok<Decoded<V>> ok ? Optional.of(ok.value()) : Optional.empty();
  }

  private void readPart(Part<?, ?> part) {
    Node.Member member = members.get(part.key());
    if (member != null) {
      outcome(part, member.value())
          .ifPresentOrElse(outcome -> parts.put(part.key(), outcome), () -> unread.add(part.key()));
    }
  }

  private Optional<Outcome<Datum>> outcome(Part<?, ?> part, Node node) {
    return node instanceof Node.Tree tree
        ? absence(part, tree)
        : DatumReader.read(part.spec(), node, complaints).map(Outcome::found);
  }

  private Optional<Outcome<Datum>> absence(Part<?, ?> part, Node.Tree tree) {
    String wanted = DatumTexts.wanted(part.spec());
    if (!part.mayBeAbsent()) {
      boolean reason = tree.get(Keys.ABSENT).isPresent();
      return complaints.add(
          tree, wanted, reason ? "leave the key out: only the whole entry can be absent" : "");
    }
    Optional<Node> reason = tree.get(Keys.ABSENT);
    if (reason.isEmpty() || tree.members().size() > 1) {
      return complaints.add(tree, wanted + ", or { absent: reason }", "");
    }
    return scalars
        .word(reason.get(), Scalars.REASONS)
        .map(Absence.class::cast)
        .map(Outcome::absent);
  }

  private EncodedValue readValue() {
    Optional<Node> node = Optional.ofNullable(members.get(Keys.VALUE)).map(Node.Member::value);
    Variant first = layout.variants().get(0);
    EncodedValue without = new EncodedValue(first.notation(), Optional.empty(), parts);
    Optional<EncodedValue> panel =
        layout.choice().isPresent()
            ? node.flatMap(written -> choice(written, without)).or(() -> missing(node))
            : node.isEmpty() || first.value().isEmpty()
                ? Optional.of(without)
                : DatumReader.read(first.value().get(), node.get(), complaints)
                    .map(datum -> new EncodedValue(Optional.empty(), Optional.of(datum), parts));
    if (panel.isEmpty()) {
      unread.add(Keys.VALUE);
    }
    return panel.orElse(without);
  }

  private Optional<EncodedValue> missing(Optional<Node> node) {
    return node.isPresent()
        ? Optional.empty()
        : complaints.add(place.key(Keys.VALUE), "nothing", notations(), "");
  }

  private String notations() {
    // What the written form wants is reported by what it says of an empty text.
    return layout
        .readChoice("", new EncodedValue(Optional.empty(), Optional.empty(), Map.of()))
        .faults()
        .stream()
        .map(Fault::wanted)
        .findFirst()
        .orElse("a value");
  }

  private Optional<EncodedValue> choice(Node node, EncodedValue others) {
    if (!(node instanceof Node.Leaf leaf)
        || leaf.kind() == Node.Kind.TRUTH
        || leaf.kind() == Node.Kind.NOTHING) {
      return complaints.add(node, notations(), "");
    }
    Result<EncodedValue> read = layout.readChoice(leaf.text(), others);
    if (!(read instanceof Result.Ok<EncodedValue> ok)) {
      Fault fault = read.faults().get(0);
      return complaints.add(node, fault.wanted(), fault.advice());
    }
    return written(leaf, ok.value().with(parts));
  }

  private Optional<EncodedValue> written(Node.Leaf leaf, EncodedValue panel) {
    String canonical = layout.writeChoice(panel);
    if (leaf.kind() == Node.Kind.TEXT && isWritten(leaf.text(), canonical)) {
      return Optional.of(panel);
    }
    return complaints.add(
        leaf, '"' + canonical + '"', "a record has one way to write it: copy this one");
  }

  private boolean isWritten(String text, String canonical) {
    // The pattern is needed only for the rare text that says more than the shortest form.
    return text.equals(canonical)
        || Pattern.matches(layout.choice().map(Choice::pattern).orElse(""), text);
  }

  /** Checks what could be read; what could not has been reported already. */
  private void checkTheRest(EncodedValue panel) {
    layout.check(panel).stream().filter(fault -> isRead(fault.path())).forEach(this::complain);
  }

  private void complain(Fault fault) {
    complaints.add(placeOf(fault.path()), fault);
  }

  private boolean isRead(String key) {
    return !unread.contains(key) && (parts.containsKey(key) || key.equals(Keys.VALUE));
  }

  private TextPlace placeOf(String key) {
    if (key.isEmpty()) {
      return place;
    }
    Node.Member member = members.get(key);
    if (member == null && isOwn(key)) {
      // The written form of the value covers the parts that only its notation has.
      member = members.get(Keys.VALUE);
    }
    return member == null ? place.key(key) : member.value().place();
  }

  private boolean isOwn(String key) {
    return layout.commonParts().stream().noneMatch(part -> part.key().equals(key));
  }
}
