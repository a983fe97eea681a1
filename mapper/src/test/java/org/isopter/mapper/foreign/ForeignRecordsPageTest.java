package org.isopter.mapper.foreign;

import java.nio.file.Path;
import java.util.List;
import org.isopter.mapper.Goldens;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.foreign.vocabulary.ForeignPage;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.Test;

/** The page of foreign records says what the reader does; {@code -Dgolden=update} rewrites it. */
class ForeignRecordsPageTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  /** The shapes of records that others write, each in a file of our own. */
  static final List<String> SHAPES =
      List.of(
          "eye-by-body-site.json",
          "eye-by-extension.json",
          "eye-by-structure.json",
          "panel-of-components.json",
          "perimetry-in-report.json",
          "lines-with-wrong-systems.ndjson",
          "shorthand-in-text.json",
          "refraction-in-pieces.json",
          "findings-by-code.json",
          "local-codes.json",
          "orders-and-others.json",
          "time-from-around.json",
          "not-a-resource.json");

  private static final String HEAD =
      """
      # Records of other systems

      A record that arrives from a system that knows nothing of our profiles is read resource by
      resource, and each ends as one of three:

      * **exact**: it says what the catalogue says, in our own form;
      * **translated** by the rules below, each named in the report; what no rule took is left over,
        leaf by leaf, and goes along;
      * **kept** verbatim, with every reason why.

      There is no fourth. What was taken and what is left over are together the input, to the leaf and
      to the digit: `1.50` stays `1.50`. What is left over is written out again: in its old place where
      that is free, else in an extension of the observation that its resource became. What was kept is
      an entry of its own, unchanged and marked as kept. Reading what was written gives the same
      examination and the same left-overs.

      A side, a unit or a notation is never guessed. Where two places of a resource disagree, none of
      them is taken. A part that does not fit takes the whole finding with it: a refraction without
      its cylinder would say something else.

      Words are read where all of them are known, in some languages also those of the eye, of acuity
      and of pressure. Words beside a code may say more than the code, as that it was through a
      pinhole; where they name another finding, another eye, a target or a prescription, nothing is
      taken. An acuity in words that may be near or through a pinhole, and are not known, is kept.

      A component, an extension or a method beside a value that is not understood may change what the
      value means: then nothing of the observation is taken, unless a list names it as harmless. The same
      holds for a note of which a word is not known, or whose words name another eye, near vision, a
      pinhole, a target or a mistake.

      So does anything else in a concept beside the code that was read: another published code, or
      words that name something else. A category, an interpretation, a label, a source or a specimen
      keeps the observation unless it is known as harmless, and so does a report, a panel or a section
      of targets, of an earlier visit or of a relative, or one whose name or narrative tells of another
      eye alone. A section is one of findings only where its name is known as such.

      An element that FHIR does not have, or in another shape than it has there (one for a list), is
      seen by no rule, and keeps the observation. A name beside a published code may be in any language
      that is read; with a word that is not known it keeps the observation too. The narrative that a
      sender made of the same data must not name another eye, a target or a mistake; its numbers are
      not compared.

      An observation without a time has that of the report that names it, else the one that the caller
      states (`--performed`), else that of its visit of no more than a day, else when it was issued; a
      remark in the record and a rule in the report say which.

      A text is read as [shorthand](shorthand.md) where all of it is understood and it tells only what
      the code above it is about. It may tell of both eyes, unless a code names one. A time of day and
      a pressure without its unit are not taken from it.

      Answers to a form (QuestionnaireResponse) are read where its questions (Questionnaire) are inside
      the response, in the same bundle, or among what is read together: each answer as an observation,
      by the same rules. Its code is that of its question, or of the group around it where the question
      names only an eye; its unit is that of the question. An answer that names no finding may say how
      another was found: it is read beside all that stand in its group, and where its group holds no
      value, in the group around. It must be a method, a condition or a remark that is understood there,
      or ask for something that is known to say nothing of a test, such as allergies; otherwise nothing
      beside it is taken. The time is when the answers were last changed, and marked as such. The response
      goes along whole.

      | policy | what is left over |
      |---|---|
      | `strict` | fails the input, unless it tells only how a resource is kept and shown |
      | `faithful` | is reported, kept in a file beside the record, and written out again |
      | `extract` | is reported |

      ## What belongs together

      Observations of one person become one examination by the first of these that holds: one report or
      one panel names them; they are of one encounter and one day; they lie within the window of time
      that the caller gives (by default the same instant). Persons who are known by name only are never
      put together by time. The identifier of the examination follows from person and visit, so that
      the same input always gives the same record.

      Sphere, cylinder, axis, addition and prism that come as observations of their own become one
      refraction where they are of one person, one eye and one panel, or one time; without a panel
      sphere and cylinder must both be there. No part may be there twice, and technique and instrument
      must be the same. The first holds the fact; the others go along whole.

      Two observations with the same identifier, or the same type and id, are one: the first where their
      content is equal, else the higher version, else the later change or issue. Where neither is said
      to be later, none is taken. No version holds that a history deletes after it.

      References and visits are found among what is read together: the single resources of one folder,
      or of one block of lines (NDJSON), 2,000 unless set otherwise; each bundle by itself, since in
      another `Patient/1` is another person. A caller may have everything read together, or nothing.

      ## Codes and words of a department

      `from-fhir`, `pool` and `describe` take `--habits FILE`, the same file in which a department keeps
      its [phrases](shorthand.md#phrases-and-habits). Its lines of the kind `fhir` are for this; what
      they mean stands in the second column, and phrases are words or codes as `system#code`:

      | second column | phrases |
      |---|---|
      | `code intraocular-pressure`, or `code intraocular-pressure right` | codes of a finding |
      | `name intraocular-pressure` | its titles |
      | `part sphere` | codes or words of a part |
      | `condition correction spectacles` | codes or words of a part and its answer |
      | `method goldmann` | codes or words of a technique |
      | `unit mm[Hg]`, `notation decimal` | spellings |
      | `answer pupil-response brisk` | codes or words of an answer |
      | `eye left` | codes of a body site |
      | `category` | categories that say nothing of the value |
      | `harmless`, or `harmless refraction` | components and extensions that say nothing of the value |
      | `note` | words that a note may have beside a value, of which they say nothing |

      The file is checked before anything is read: an unknown finding, part, answer or unit, and a
      phrase that has a meaning already, is an error with its line. A word of notes that denies, doubts,
      names a side or a person, or stands in a phrase that the library reads, in whatever language, cannot
      be passed over. A line by which a resource was read is among the rules of the report, as
      `habits-line-3`.

      ## On the command line

      `from-fhir` reads such records and `to-fhir` writes them again with all that was kept; see [the
      command line](command-line.md#fhir-of-other-systems).

      ```console
      $ ./isopter from-fhir docs/foreign/clinic.json --output target/clinic.yaml --table target/clinic.txt
      …
      isopter: 1 examination written as yaml to target/clinic.yaml; what was left over is in target/clinic.yaml.carried
      $ ./isopter to-fhir target/clinic.yaml --output target/clinic-again.json
      isopter: 1 document written as json to target/clinic-again.json
      $ ./isopter from-fhir target/clinic-again.json --output target/clinic-again.yaml
      isopter: 12 resources: 7 exact, 0 translated, 5 kept (1 no-side, 1 notation-not-stated, 3 other-resource)
      isopter: 1 examination written as yaml to target/clinic-again.yaml; what was left over is in target/clinic-again.yaml.carried
      ```

      ## Rules

      """;

  @Test
  void saysWhatTheReaderDoes() {
    StringBuilder page = new StringBuilder(HEAD);
    page.append(ForeignPage.rules());
    page.append("\n## Reasons for keeping\n\n").append(ForeignPage.reasons());
    page.append(
        "\n## Shapes\n\nEach shape is a file of our own under `mapper/src/test/resources/foreign`.\n\n");
    page.append("| shape | exact | translated | kept | examinations |\n|---|---|---|---|---|\n");
    SHAPES.forEach(shape -> page.append(counts(shape)));
    SHAPES.forEach(shape -> page.append(details(shape)));
    Goldens.check(Path.of("..", "docs", "foreign-records.md"), page.toString());
  }

  private static String counts(String shape) {
    Reading reading = read(shape);
    return "| `%s` | %d | %d | %d | %d |\n"
        .formatted(
            shape,
            reading.count("exact"),
            reading.count("translated"),
            reading.count("kept"),
            reading.exams().size());
  }

  private static String details(String shape) {
    StringBuilder text = new StringBuilder("\n### `" + shape + "`\n\n");
    text.append("| resource | taken, or why not | rules | left over |\n|---|---|---|---|\n");
    for (ReadResource read : read(shape).resources()) {
      text.append("| %s | %s | %s |\n".formatted(read.name(), said(read), rules(read)));
    }
    return text.toString();
  }

  private static String said(ReadResource read) {
    if (read.outcome() instanceof ResourceOutcome.Kept kept) {
      Reason reason = kept.reasons().get(0);
      return "kept: " + reason.why().word() + " (saw " + cell(reason.fault().seen()) + ")";
    }
    String reasons =
        read.outcome() instanceof ResourceOutcome.Translated translated
                && !translated.reasons().isEmpty()
            ? "; left over: " + cell(translated.reasons().get(0).toString())
            : "";
    return CarefulHumanTest.said(read) + reasons;
  }

  private static String cell(String text) {
    return text.replace("|", "\\|");
  }

  private static String rules(ReadResource read) {
    return read.outcome() instanceof ResourceOutcome.Translated translated
        ? String.join(", ", translated.rules()) + " | " + translated.leftover().size()
        : " | ";
  }

  static Path file(String shape) {
    return Path.of("src", "test", "resources", "foreign", shape);
  }

  static Reading read(String shape) {
    Path file = file(shape);
    if (shape.endsWith(".ndjson")) {
      return READER.readTogether(
          Foreign.lines(file).stream()
              .map(line -> new RawJson(Limits.USUAL).read(line).orThrow())
              .toList());
    }
    return READER.read(Foreign.text(file)).orThrow();
  }
}
