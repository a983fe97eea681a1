package org.isopter.mapper.pool;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.Rounding;
import org.isopter.mapper.table.EyeRow;
import org.isopter.mapper.table.FindingRow;
import org.isopter.mapper.table.FindingRows;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.PooledExam;
import org.isopter.mapper.table.SparseRow;
import org.isopter.mapper.table.StepRow;
import org.isopter.mapper.table.StepsTable;
import org.isopter.mapper.table.Table;
import org.isopter.model.derive.Derivations;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;

/**
 * The rows of one examination, and its bundle where one is wanted.
 *
 * @param exam the examination as it is in the tables
 * @param findings the cells of the rows of the long table
 * @param eyes the cells of the rows of the wide table
 * @param steps the cells of the rows of the usual steps
 * @param bundle the bundle on one line
 * @param older the names that person and examination had under an older key, where one is given
 */
record ExamRows(
    PooledExam exam,
    List<SparseRow> findings,
    List<SparseRow> eyes,
    List<SparseRow> steps,
    Optional<String> bundle,
    Optional<Older> older) {

  /** Pseudonyms under an older key. */
  record Older(Identifier subject, Identifier examination) {}

  /** Makes rows of examinations; what a job on many machines does to each, this does too. */
  record Maker(
      Table<FindingRow> findings,
      Table<EyeRow> eyes,
      Table<StepRow> steps,
      Optional<Deidentifier> deidentifier,
      Optional<FhirWriter> bundles,
      Optional<Deidentifier> older) {

    /** Returns one that makes what a plan wants. */
    static Maker of(PoolPlan plan, Table<EyeRow> eyes) {
      FhirWriter plain = FhirWriter.of(BundleKind.COLLECTION);
      FhirWriter writer =
          plan.deidentifier().isPresent() ? plain.labelled(PoolLabel.code()) : plain;
      return new Maker(
          FindingsTable.table(),
          eyes,
          StepsTable.table(),
          plan.deidentifier(),
          plan.bundles() ? Optional.of(writer) : Optional.empty(),
          Optional.empty());
    }

    Maker rotatedFrom(Deidentifier former) {
      return new Maker(findings, eyes, steps, deidentifier, bundles, Optional.of(former));
    }

    ExamRows of(PooledExam read) {
      PooledExam exact = deidentifier.map(one -> one.apply(read)).orElse(read);
      Rounding rounding = deidentifier.map(Deidentifier::rounding).orElse(Rounding.NONE);
      ExamView known = exact.exam().view();
      List<Derived> derived = rounding.left(Derivations.of(known), exact.exam());
      PooledExam pooled = rounding.apply(exact);
      ExamView view = rounding.isNone() ? known : pooled.exam().view();
      return new ExamRows(
          pooled,
          FindingRows.of(pooled, view, derived).stream().map(findings::sparse).toList(),
          EyeRow.of(pooled, view, derived).stream().map(eyes::sparse).toList(),
          StepRow.of(view).stream().map(steps::sparse).toList(),
          bundles.map(writer -> writer.write(pooled.exam())),
          older.map(former -> older(former, read.exam().header())));
    }

    private static Older older(Deidentifier former, Header header) {
      return new Older(former.subject(header.subject()), former.examination(header.id()));
    }
  }
}
