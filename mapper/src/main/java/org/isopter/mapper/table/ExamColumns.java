package org.isopter.mapper.table;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Setting;

/** The columns that name the person and the examination: the keys that join the tables. */
final class ExamColumns {

  private ExamColumns() {}

  static <R> List<Column<R>> of(Function<R, Exam> exam, Function<R, OffsetDateTime> at) {
    return new Columns<R>()
        .text("subject", "key of the person", row -> subject(exam.apply(row)))
        .text("examination", "key of the examination", row -> key(exam.apply(row)))
        .add(
            "time",
            Kind.TIME,
            "when, by the clock of the place",
            row -> Optional.of(at.apply(row).toLocalDateTime()))
        .text("status", "how far the record has come", row -> status(exam.apply(row)))
        .add("setting", Kind.TEXT, "where it took place", row -> setting(exam.apply(row)))
        .oneOf(Setting.values())
        .add(
            "amends",
            Kind.TEXT,
            "key of the examination that it replaces",
            row -> exam.apply(row).header().amends().map(Identifier::toString))
        .list();
  }

  private static String status(Exam exam) {
    return exam.header().status().word();
  }

  private static Optional<String> setting(Exam exam) {
    return exam.header().setting().map(Setting::word);
  }

  private static String key(Exam exam) {
    return exam.header().id().toString();
  }

  private static String subject(Exam exam) {
    return key(exam.header().subject());
  }

  /** Returns the key of a party: its identifier, or else its name. */
  static String key(Party person) {
    return person.identifier().map(Identifier::toString).or(person::name).orElseThrow();
  }
}
