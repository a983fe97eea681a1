package org.isopter.model.entry;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * An examination that is not finished: whose it is, when it began, and what was answered.
 *
 * <p>As text it has a line for each, with a tab behind its name: {@code subject}, {@code record}
 * and {@code performed}, then the answers, by the key of their step.
 */
public final class EntryDraft {

  private static final List<String> HEAD = List.of("subject", "record", "performed");

  private final String subject;
  private final String record;
  private final OffsetDateTime performed;
  private final EntryAnswers answers;

  private EntryDraft(
      String subject, String record, OffsetDateTime performed, EntryAnswers answers) {
    this.subject = subject;
    this.record = record;
    this.performed = performed;
    this.answers = answers;
  }

  static EntryDraft of(Header header, EntryAnswers answers) {
    return new EntryDraft(subject(header), header.id().value(), header.performed(), answers);
  }

  private static String subject(Header header) {
    return header.subject().identifier().map(Identifier::value).orElse("");
  }

  /** Reads a draft; a line that is none of a draft refuses it, for nothing of it may be lost. */
  public static Result<EntryDraft> read(String text) {
    Map<String, String> head = new HashMap<>();
    EntryAnswers answers = new EntryAnswers();
    List<String> lines = List.of(text.split("\n", -1));
    for (int i = 0; i < lines.size(); i++) {
      if (!lines.get(i).isBlank() && !take(lines.get(i), head, answers)) {
        return refused("line " + (i + 1), lines.get(i));
      }
    }
    return head.keySet().containsAll(HEAD) ? of(head, answers) : refused("draft", "no head");
  }

  private static boolean take(String line, Map<String, String> head, EntryAnswers answers) {
    int tab = line.indexOf('\t');
    String key = line.substring(0, Math.max(0, tab));
    int step = EntryAnswers.step(key);
    if (step >= 0) {
      answers.add(step, line.substring(tab + 1));
    } else if (HEAD.contains(key)) {
      head.put(key, line.substring(tab + 1));
    }
    return step >= 0 || HEAD.contains(key);
  }

  private static Result<EntryDraft> of(Map<String, String> head, EntryAnswers answers) {
    String performed = head.getOrDefault("performed", "");
    try {
      return Result.ok(
          new EntryDraft(
              head.getOrDefault("subject", ""),
              head.getOrDefault("record", ""),
              OffsetDateTime.parse(performed),
              answers));
    } catch (DateTimeException noTime) {
      return refused("performed", performed);
    }
  }

  private static Result<EntryDraft> refused(String place, String seen) {
    return Result.refused(List.of(Fault.of(place, seen, "a draft as examine writes it")));
  }

  /** Returns the id of the person examined. */
  public String subject() {
    return subject;
  }

  /** Returns the id of the record. */
  public String record() {
    return record;
  }

  /** Returns when the examination began. */
  public OffsetDateTime performed() {
    return performed;
  }

  /** Returns the answers. */
  EntryAnswers answers() {
    return answers;
  }

  /** Returns the draft as text. */
  public String write() {
    return "subject\t%s\nrecord\t%s\nperformed\t%s\n".formatted(subject, record, performed)
        + answers.draft();
  }

  /**
   * Returns the header to go on with: the time and the id of the draft, the rest as it was asked
   * for. Refused where another person is asked for.
   */
  public Result<Header> header(Header asked) {
    String other = subject(asked);
    if (!other.equals(subject)) {
      return Result.refused(List.of(unfinished("subject", other, subject)));
    }
    return Result.ok(
        new Header(
            new Identifier(asked.id().system(), record),
            asked.subject(),
            asked.demographics(),
            asked.performer(),
            performed,
            asked.status(),
            asked.setting(),
            Optional.empty(),
            asked.remark()));
  }

  /** Returns the fault that something else is asked for than the draft holds. */
  public static Fault unfinished(String path, String asked, String held) {
    return new Fault(
        path,
        asked,
        held + ", of which there is an unfinished examination",
        "finish that one, or write to another name");
  }
}
