package org.isopter.model.letter;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.drawing.SeenBy;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Setting;

/** A summary as the page that goes with a referral letter, in plain text, Markdown or HTML. */
public final class Letter {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy, HH:mm", Locale.UK);

  private final Page page;
  private final Optional<UrgencyRules> rules;
  private final boolean detail;

  private Letter(Page page, Optional<UrgencyRules> rules, boolean detail) {
    this.page = page;
    this.rules = rules;
    this.detail = detail;
  }

  /** Returns a letter in Markdown. */
  public static Letter markdown() {
    return new Letter(new MarkdownPage(), Optional.empty(), false);
  }

  /** Returns a letter in plain text, with columns at most 100 characters wide. */
  public static Letter text() {
    return new Letter(new TextPage(), Optional.empty(), false);
  }

  /** Returns a letter as a page of HTML with pictures, to be read or printed without a network. */
  public static Letter html() {
    return html(SeenBy.USUAL);
  }

  /** Returns a letter as a page of HTML with pictures as they are seen from one side. */
  public static Letter html(SeenBy view) {
    return new Letter(new HtmlPage(view), Optional.empty(), false);
  }

  /** Returns this letter with what a named list of urgent findings says; it is never complete. */
  public Letter with(UrgencyRules list) {
    return new Letter(page, Optional.of(list), detail);
  }

  /** Returns this letter with all that follows: arithmetic, reasons, certainty and sources. */
  public Letter detailed() {
    return new Letter(page, rules, true);
  }

  /** Returns the page, with a line feed at its end. */
  public String write(Summary summary) {
    List<String> blocks = new ArrayList<>();
    Header header = summary.exam().header();
    String title = "Eye examination: " + subject(header);
    blocks.add(page.head(title, opening(header, summary)));
    found(summary, blocks);
    page.pictures(summary.exam()).ifPresent(blocks::add);
    notFound(summary, blocks);
    section(
        blocks,
        "Entries that do not agree; one may be a slip",
        Disagreements.lines(summary.exam()));
    rules.ifPresent(list -> hints(summary.exam(), list, blocks));
    derived(summary, blocks);
    blocks.add(page.caution(Caution.TEXT));
    return page.document(title, String.join("\n", blocks));
  }

  private static List<String> opening(Header header, Summary summary) {
    List<String> lines = new ArrayList<>(List.of(circumstances(header)));
    header.remark().ifPresent(lines::add);
    lines.addAll(summary.defect());
    return lines;
  }

  private void found(Summary summary, List<String> blocks) {
    if (!summary.rows().isEmpty() || !summary.together().isEmpty()) {
      blocks.add(page.table(summary.rows(), String.join(" ", summary.together())));
    }
  }

  private void notFound(Summary summary, List<String> blocks) {
    List<String> lines = new ArrayList<>(summary.missing());
    summary.silent().ifPresent(lines::add);
    if (!lines.isEmpty()) {
      blocks.add(page.section("Without a result", lines));
    }
  }

  private void hints(Exam exam, UrgencyRules list, List<String> blocks) {
    List<String> lines = new ArrayList<>(list.hints(exam));
    if (lines.isEmpty()) {
      lines.add("Nothing recorded here is on the part looked at; that means nothing.");
    }
    lines.add(list.about());
    blocks.add(page.section("Held against a list of urgent findings", lines));
  }

  private void derived(Summary summary, List<String> blocks) {
    section(blocks, "What follows (not observed)", summary.derived());
    if (detail && !summary.detail().isEmpty()) {
      section(blocks, "How it follows, by calculation or from tables", summary.detail());
      List<String> numbered = new ArrayList<>();
      for (String source : summary.sources()) {
        numbered.add("[" + (numbered.size() + 1) + "] " + source);
      }
      section(blocks, "Sources", numbered);
    }
  }

  private void section(List<String> blocks, String heading, List<String> items) {
    if (!items.isEmpty()) {
      blocks.add(page.section(heading, items));
    }
  }

  private static String subject(Header header) {
    String about = Ages.text(header.demographics());
    return person(header.subject()) + (about.isEmpty() ? "" : ", " + about);
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
