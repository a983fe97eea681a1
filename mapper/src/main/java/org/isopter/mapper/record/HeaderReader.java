package org.isopter.mapper.record;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.record.tree.Complaints;
import org.isopter.mapper.record.tree.Node;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Setting;
import org.isopter.model.exam.Status;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Decoded;
import org.isopter.model.finding.Part;

/** Reads what holds for the whole examination. */
public final class HeaderReader {

  public static final Answers SETTINGS = Answers.of(Setting.class);

  private static final List<String> OF_AN_IDENTIFIER = List.of(Keys.ID, Keys.SYSTEM);
  private static final List<String> OF_A_PARTY = List.of(Keys.ID, Keys.SYSTEM, Keys.NAME);
  private static final List<String> DEMOGRAPHICS =
      Demographics.LAYOUT.commonParts().stream().<String>map(Part::key).toList();
  private static final List<String> OF_A_SUBJECT =
      Stream.concat(OF_A_PARTY.stream(), DEMOGRAPHICS.stream()).toList();

  private final Node.Tree tree;
  private final Catalogue catalogue;
  private final Scalars scalars;
  private final Complaints complaints;

  HeaderReader(Node.Tree tree, Catalogue catalogue, Scalars scalars, Complaints complaints) {
    this.tree = tree;
    this.catalogue = catalogue;
    this.scalars = scalars;
    this.complaints = complaints;
  }

  /** Returns the header, or nothing after a complaint. */
  Optional<Header> read() {
    checkKeys(tree, Keys.OF_A_RECORD);
    required(tree, Keys.ISOPTER, "the version of the format, " + Keys.VERSION, this::version);
    Optional<Identifier> id = required(tree, Keys.RECORD, "the record's id", this::identifier);
    Optional<Party> subject =
        required(tree, Keys.SUBJECT, "the person examined", node -> party(node, OF_A_SUBJECT));
    Demographics demographics =
        tree.get(Keys.SUBJECT).flatMap(this::demographics).orElse(Demographics.UNKNOWN);
    Optional<Party> performer = tree.get(Keys.PERFORMER).flatMap(node -> party(node, OF_A_PARTY));
    Optional<OffsetDateTime> performed =
        required(tree, Keys.PERFORMED, "the time of the examination", scalars::time);
    Optional<Status> status = required(tree, Keys.STATUS, statuses(), this::status);
    Optional<Setting> setting =
        tree.get(Keys.SETTING)
            .flatMap(node -> scalars.word(node, SETTINGS))
            .map(Setting.class::cast);
    Optional<Identifier> amends = tree.get(Keys.AMENDS).flatMap(this::identifier);
    Optional<String> remark = tree.get(Keys.REMARK).flatMap(scalars::text);
    status.ifPresent(this::checkAmends);
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Header(
            id.orElseThrow(),
            subject.orElseThrow(),
            demographics,
            performer,
            performed.orElseThrow(),
            status.orElseThrow(),
            setting,
            amends,
            remark));
  }

  private Optional<Integer> version(Node node) {
    String version = Integer.toString(Keys.VERSION);
    return node.as(Node.Kind.NUMBER).filter(version::equals).isPresent()
        ? Optional.of(Keys.VERSION)
        : complaints.add(node, version, "this program reads version " + version + " of the format");
  }

  private Optional<Status> status(Node node) {
    Optional<Status> status = node.as(Node.Kind.TEXT).flatMap(Status::of);
    return status.isPresent() ? status : complaints.add(node, statuses(), statusAdvice(node));
  }

  private static String statusAdvice(Node node) {
    return node.as(Node.Kind.TEXT).equals(Optional.of("corrected"))
        ? "a changed record is amended and names the one it replaces"
        : Scalars.wordAdvice(node, Arrays.stream(Status.values()).map(Status::word).toList());
  }

  private void checkAmends(Status status) {
    Optional<Node> amends = tree.get(Keys.AMENDS);
    if (status == Status.AMENDED && amends.isEmpty()) {
      complaints.add(
          tree.placeOf(Keys.AMENDS),
          "nothing beside status amended",
          "the id of the record that this one replaces",
          "add, for instance, amends: { id: … }");
    } else if (status != Status.AMENDED && amends.isPresent()) {
      complaints.add(
          tree.placeOf(Keys.AMENDS),
          "a replaced record beside status " + status.word(),
          "status amended, or no amends",
          "");
    }
  }

  private Optional<Identifier> identifier(Node node) {
    return keyed(node, "an id, and the system that gives it out", OF_AN_IDENTIFIER)
        .flatMap(this::identifierIn);
  }

  private Optional<Identifier> identifierIn(Node.Tree from) {
    Optional<String> id = required(from, Keys.ID, "an identifier", scalars::text);
    Optional<String> system = from.get(Keys.SYSTEM).flatMap(scalars::text);
    return id.map(value -> new Identifier(system, value));
  }

  private Optional<Party> party(Node node, List<String> keys) {
    return keyed(node, "a person by id, by name, or by both", keys).flatMap(this::partyIn);
  }

  private Optional<Demographics> demographics(Node node) {
    return node instanceof Node.Tree subject
            && DEMOGRAPHICS.stream().anyMatch(key -> subject.get(key).isPresent())
        ? new PanelReader<>(
                Demographics.LAYOUT, subject.place(), subject.members(), scalars, complaints)
            .read()
            .map(Decoded::value)
        : Optional.empty();
  }

  private Optional<Party> partyIn(Node.Tree from) {
    if (from.get(Keys.ID).isEmpty() && from.get(Keys.NAME).isEmpty()) {
      return complaints.add(
          from.place(), "neither id nor name", "a person by id, by name, or by both");
    }
    Optional<String> name = from.get(Keys.NAME).flatMap(scalars::text);
    boolean identified = from.get(Keys.ID).isPresent() || from.get(Keys.SYSTEM).isPresent();
    Optional<Identifier> id = identified ? identifierIn(from) : Optional.empty();
    return id.isPresent() || name.isPresent() ? Optional.of(new Party(id, name)) : Optional.empty();
  }

  private Optional<Node.Tree> keyed(Node node, String wanted, List<String> keys) {
    if (!(node instanceof Node.Tree found)) {
      boolean bare = node.as(Node.Kind.TEXT).isPresent();
      return complaints.add(node, wanted, bare ? "write { id: " + node.shown() + " }" : "");
    }
    checkKeys(found, keys);
    return Optional.of(found);
  }

  private <T> Optional<T> required(
      Node.Tree from, String key, String wanted, Function<Node, Optional<T>> read) {
    Optional<Node> node = from.get(key);
    return node.isPresent()
        ? read.apply(node.get())
        : complaints.add(from.place().key(key), "nothing", wanted);
  }

  private void checkKeys(Node.Tree from, List<String> keys) {
    from.members()
        .forEach(
            (key, member) -> {
              if (!keys.contains(key)) {
                complaints.add(
                    member.key(),
                    "an unknown key",
                    "one of " + String.join(", ", keys),
                    keyAdvice(key, keys));
              }
            });
  }

  private String keyAdvice(String key, List<String> keys) {
    return catalogue.byId(key).isPresent()
        ? "it is a finding: put it under findings"
        : Scalars.wordAdvice(key, keys);
  }

  private static String statuses() {
    return Arrays.stream(Status.values())
        .map(Status::word)
        .collect(Collectors.joining(", ", "one of ", ""));
  }
}
