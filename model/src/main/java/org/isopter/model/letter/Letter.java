package org.isopter.model.letter;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Setting;

/** A summary as the page that goes with a referral letter, in plain text or in Markdown. */
public final class Letter {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy, HH:mm", Locale.UK);

  private final Page page;
  private final Optional<UrgencyRules> rules;

  private Letter(Page page, Optional<UrgencyRules> rules) {
    this.page = page;
    this.rules = rules;
  }

  /** Returns a letter in Markdown. */
  public static Letter markdown() {
    return new Letter(new MarkdownPage(), Optional.empty());
  }

  /** Returns a letter in plain text, with columns at most 100 characters wide. */
  public static Letter text() {
    return new Letter(new TextPage(), Optional.empty());
  }

  /** Returns this letter with what a named list of urgent findings says; it is never complete. */
  public Letter with(UrgencyRules list) {
    return new Letter(page, Optional.of(list));
  }

  /** Returns the page, with a line feed at its end. */
  public String write(Summary summary) {
    List<String> blocks = new ArrayList<>();
    Header header = summary.exam().header();
    blocks.add(page.title("Eye examination: " + person(header.subject())));
    blocks.add(page.paragraph(circumstances(header)));
    header.remark().ifPresent(remark -> blocks.add(page.paragraph(remark)));
    found(summary, blocks);
    section(blocks, "Without a result", summary.missing());
    rules.ifPresent(list -> hints(summary.exam(), list, blocks));
    derived(summary, blocks);
    return String.join("\n", blocks);
  }

  private void found(Summary summary, List<String> blocks) {
    blocks.add(page.heading("Found"));
    if (!summary.rows().isEmpty()) {
      blocks.add(page.table(summary.rows()));
    }
    if (!summary.together().isEmpty()) {
      blocks.add(page.items(summary.together()));
    }
  }

  private void hints(Exam exam, UrgencyRules list, List<String> blocks) {
    blocks.add(page.heading("Held against a list of urgent findings"));
    blocks.add(page.paragraph(list.about()));
    List<String> hints = list.hints(exam);
    blocks.add(
        page.items(
            hints.isEmpty()
                ? List.of("Nothing recorded here is on the part looked at; that means nothing.")
                : hints));
  }

  private void derived(Summary summary, List<String> blocks) {
    if (summary.derived().isEmpty()) {
      return;
    }
    section(blocks, "What follows by calculation or from tables (not observed)", summary.derived());
    blocks.add(page.paragraph(Caution.TEXT));
    List<String> numbered = new ArrayList<>();
    for (String source : summary.sources()) {
      numbered.add("[" + (numbered.size() + 1) + "] " + source);
    }
    section(blocks, "Sources", numbered);
  }

  private void section(List<String> blocks, String heading, List<String> items) {
    if (!items.isEmpty()) {
      blocks.add(page.heading(heading));
      blocks.add(page.items(items));
    }
  }

  private static String circumstances(Header header) {
    return "Examined on "
        + DAY.format(header.performed())
        + header.performer().map(by -> ", by " + person(by)).orElse("")
        + header.setting().map(Letter::where).orElse("")
        + "."
        + status(header);
  }

  private static String where(Setting setting) {
    return switch (setting) {
      case BEDSIDE -> ", at the bedside";
      case CLINIC -> ", in the clinic";
      case EMERGENCY -> ", in the emergency department";
      case WARD -> ", on the ward";
      case HOME -> ", at home";
      case SCREENING -> ", at a screening";
    };
  }

  private static String status(Header header) {
    return switch (header.status()) {
      case FINAL -> "";
      case PRELIMINARY -> " Preliminary: it may still change.";
      case AMENDED ->
          " Amended: this replaces the record "
              + header.amends().map(Identifier::value).orElse("before it")
              + ".";
      case ENTERED_IN_ERROR -> " Entered in error: do not use it.";
    };
  }

  private static String person(Party party) {
    String number = party.identifier().map(Identifier::value).orElse("");
    return party
        .name()
        .map(name -> number.isEmpty() ? name : name + " (" + number + ")")
        .orElse(number);
  }
}
