package org.isopter.task.page;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Codes;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.task.io.Messages;

/** A finding as rows, which the pages of the catalogue lay out. */
final class CatalogueRows {

  /**
   * A code and where it holds.
   *
   * @param code the code
   * @param where the site, and the part beside which it holds; empty where it always holds
   */
  record CodeRow(Code code, String where) {}

  /**
   * A value or a part.
   *
   * @param key what a record calls it
   * @param notation the notation to which it belongs; empty where it belongs to all
   * @param need whether it may be left out or be stated as absent
   * @param spec what it may be
   */
  record ValueRow(String key, String notation, String need, Spec spec) {

    /** Returns what it may be, in words. */
    String mayBe() {
      if (spec instanceof Spec.Measure measure) {
        int decimals = measure.decimals();
        String digits =
            decimals == 0 ? "whole numbers" : "up to " + Messages.count(decimals, "decimal");
        return DatumTexts.wanted(spec) + ", " + digits;
      }
      return DatumTexts.wanted(spec);
    }
  }

  private CatalogueRows() {}

  static String sites(Finding<?> finding) {
    return finding.sites().stream().map(site -> site.word()).collect(Collectors.joining(", "));
  }

  static List<CodeRow> codes(Finding<?> finding) {
    Codes codes = finding.codes();
    List<CodeRow> rows = new ArrayList<>();
    for (Codes.Refined more : codes.refined()) {
      String when = "where " + more.when().words();
      if (more.isSided()) {
        more.bySite()
            .forEach((site, code) -> rows.add(new CodeRow(code, site.word() + ", " + when)));
      } else {
        rows.add(new CodeRow(more.codes().get(0), when));
      }
    }
    codes.bySite().forEach((site, code) -> rows.add(new CodeRow(code, site.word())));
    codes.general().forEach(code -> rows.add(new CodeRow(code, "")));
    return rows;
  }

  static List<ValueRow> values(Finding<?> finding) {
    List<ValueRow> rows = new ArrayList<>();
    for (Variant variant : finding.layout().variants()) {
      String notation = variant.notation().map(Concept::word).orElse("");
      variant
          .value()
          .ifPresent(spec -> rows.add(new ValueRow(Part.VALUE, notation, "required", spec)));
      variant.specific().forEach(part -> rows.add(row(part, notation)));
    }
    finding.layout().commonParts().forEach(part -> rows.add(row(part, "")));
    return rows;
  }

  /** Returns the lists of answers that a finding uses, its techniques included. */
  static List<Answers> answers(Finding<?> finding) {
    List<Answers> lists = new ArrayList<>();
    for (ValueRow row : values(finding)) {
      if (row.spec() instanceof Spec.Coded coded) {
        lists.add(coded.answers());
      }
    }
    finding.methods().ifPresent(lists::add);
    return lists;
  }

  /** Returns the short name of a code system. */
  static String system(Code code) {
    return switch (code.system()) {
      case Code.LOINC -> "LOINC";
      case Code.SNOMED -> "SNOMED CT";
      default -> code.isLocal() ? "Isopter" : "HL7";
    };
  }

  private static ValueRow row(Part<?, ?> part, String notation) {
    String absent = part.mayBeAbsent() ? "optional, or absent with a reason" : "optional";
    return new ValueRow(part.key(), notation, part.isRequired() ? "required" : absent, part.spec());
  }
}
