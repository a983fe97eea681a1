package org.isopter.cli.option;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.person.PersonsFile;
import org.isopter.mapper.privacy.DateShift;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.Kept;
import org.isopter.mapper.privacy.Rounding;
import org.isopter.mapper.privacy.TimeGrain;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.FaultException;
import org.isopter.task.report.UsageException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What is said of persons in a pool, and how finely. */
public final class PersonOptions {

  @Option(
      names = "--persons",
      paramLabel = "FILE",
      description = {
        "CSV file of what a study knows of its persons: id, and of system, birth_year,",
        "birth_date, sex and group what there is."
      })
  @Nullable Path persons;

  @Option(
      names = "--keep",
      paramLabel = "WHAT",
      split = ",",
      description = "Give pseudonyms to what would be dropped: ${COMPLETION-CANDIDATES}.")
  List<Kept> kept = List.of();

  @Option(
      names = "--times",
      paramLabel = "GRAIN",
      defaultValue = "week",
      description = "How finely times are given: ${COMPLETION-CANDIDATES} (default: week).")
  TimeGrain times = TimeGrain.WEEK;

  @Option(
      names = "--dates",
      paramLabel = "WHERE",
      defaultValue = "ahead",
      description = {
        "Where dates are moved to: ahead by a century or two, or back by up to fifty years for",
        "tools that take no date in the future (default: ahead)."
      })
  DateShift dates = DateShift.AHEAD;

  @Option(
      names = "--round",
      paramLabel = "NUMBER=STEP",
      split = ",",
      description = {
        "Round numbers to multiples of a step in all tables, such as",
        "intraocular-pressure=2,refraction.sphere=0.5; what is concluded from them is left out."
      })
  List<String> rounded = List.of();

  @Option(
      names = "--site",
      paramLabel = "NAME",
      description = "Give all examinations the pseudonym of a site.")
  @Nullable String site;

  /** Says whether anything is asked for that only a de-identifier does. */
  boolean changes() {
    return site != null || !rounded.isEmpty();
  }

  /**
   * Returns a de-identifier that does as the options say.
   *
   * @throws UsageException when what is to be rounded is no number
   */
  Deidentifier apply(Deidentifier usual) {
    try {
      return usual
          .telling(times)
          .moving(dates)
          .keeping(kept)
          .rounding(Rounding.parse(Catalogue.standard(), rounded))
          .at(Optional.ofNullable(site));
    } catch (FaultException refused) {
      throw new UsageException(refused.faults().get(0).toString());
    }
  }

  /**
   * Returns the file of persons, read; empty where none is named.
   *
   * @throws UsageException when it cannot be read
   */
  Optional<PersonsFile> file() {
    try {
      return Optional.ofNullable(persons).map(PersonsFile::read);
    } catch (FaultException refused) {
      throw new UsageException(refused.faults().get(0).toString());
    }
  }
}
