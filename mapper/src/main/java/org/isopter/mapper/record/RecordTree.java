package org.isopter.mapper.record;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;

/**
 * An examination as the keys and values of a record, without a library: a map keeps the order of
 * the record; a value is a text, a {@link BigDecimal}, an {@link Integer}, a {@link Boolean}, a map
 * or a list.
 */
public final class RecordTree {

  private RecordTree() {}

  /** Returns the record; numbers keep their digits. */
  public static Map<String, Object> of(Exam exam) {
    Map<String, Object> tree = new LinkedHashMap<>();
    header(exam.header(), tree);
    Map<String, Map<String, Object>> findings = new LinkedHashMap<>();
    exam.facts().forEach(fact -> put(fact, findings));
    tree.put(Keys.FINDINGS, findings);
    return tree;
  }

  private static void header(Header header, Map<String, Object> tree) {
    tree.put(Keys.ISOPTER, Keys.VERSION);
    tree.put(Keys.RECORD, identifier(header.id()));
    tree.put(Keys.SUBJECT, subject(header));
    header.performer().ifPresent(party -> tree.put(Keys.PERFORMER, party(party)));
    tree.put(Keys.PERFORMED, time(header.performed()));
    tree.put(Keys.STATUS, header.status().word());
    header.setting().ifPresent(setting -> tree.put(Keys.SETTING, setting.word()));
    header.amends().ifPresent(old -> tree.put(Keys.AMENDS, identifier(old)));
    header.remark().ifPresent(remark -> tree.put(Keys.REMARK, remark));
  }

  private static Map<String, Object> identifier(Identifier identifier) {
    Map<String, Object> node = new LinkedHashMap<>();
    node.put(Keys.ID, identifier.value());
    identifier.system().ifPresent(system -> node.put(Keys.SYSTEM, system));
    return node;
  }

  private static Map<String, Object> subject(Header header) {
    Map<String, Object> node = party(header.subject());
    Layout<Demographics> layout = Demographics.LAYOUT;
    layout.encode(header.demographics()).parts().forEach((key, part) -> node.put(key, part(part)));
    return node;
  }

  private static Map<String, Object> party(Party party) {
    Map<String, Object> node =
        party.identifier().map(RecordTree::identifier).orElseGet(LinkedHashMap::new);
    party.name().ifPresent(name -> node.put(Keys.NAME, name));
    return node;
  }

  /** Puts a fact beside those of its finding and site: alone, or in a list. */
  private static void put(Fact<?> fact, Map<String, Map<String, Object>> findings) {
    Map<String, Object> sites =
        findings.computeIfAbsent(fact.finding().id(), id -> new LinkedHashMap<>());
    sites.merge(fact.site().word(), entry(fact), RecordTree::beside);
  }

  private static Object beside(Object before, Object entry) {
    List<Object> all = new ArrayList<>();
    if (before instanceof List<?> list) {
      all.addAll(list);
    } else {
      all.add(before);
    }
    all.add(entry);
    return all;
  }

  private static <V> Object entry(Fact<V> fact) {
    Map<String, Object> entry = new LinkedHashMap<>();
    fact.panel().ifPresent(panel -> found(fact.finding().layout(), panel, entry));
    fact.outcome().ifAbsent().ifPresent(reason -> absent(reason, entry));
    fact.method().map(Concept::word).ifPresent(word -> entry.put(Keys.METHOD, word));
    fact.at().ifPresent(at -> entry.put(Keys.AT, time(at)));
    fact.device().ifPresent(device -> entry.put(Keys.DEVICE, device));
    if (!fact.remarks().isEmpty()) {
      entry.put(Keys.REMARKS, fact.remarks());
    }
    return entry.size() == 1 ? entry.getOrDefault(Keys.VALUE, entry) : entry;
  }

  private static void found(Layout<?> layout, EncodedValue panel, Map<String, Object> entry) {
    Optional<Object> value =
        layout.choice().isPresent()
            ? Optional.of(layout.writeChoice(panel))
            : panel.value().map(datum -> datum.fold(DatumWriter.INSTANCE));
    value.ifPresent(node -> entry.put(Keys.VALUE, node));
    for (Part<?, ?> part : layout.commonParts()) {
      Outcome<Datum> outcome = panel.parts().get(part.key());
      if (outcome != null) {
        entry.put(part.key(), part(outcome));
      }
    }
  }

  private static Object part(Outcome<Datum> outcome) {
    return outcome.fold(
        datum -> datum.fold(DatumWriter.INSTANCE), reason -> absent(reason, new LinkedHashMap<>()));
  }

  private static Map<String, Object> absent(Absence reason, Map<String, Object> entry) {
    entry.put(Keys.ABSENT, reason.word());
    return entry;
  }

  private static String time(OffsetDateTime time) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
  }
}
