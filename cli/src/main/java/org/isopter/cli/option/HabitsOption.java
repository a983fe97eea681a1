package org.isopter.cli.option;

import org.isopter.model.note.habit.Habits;
import picocli.CommandLine.Option;

/** What a department means by its words. */
public final class HabitsOption {

  @Option(
      names = "--habits",
      paramLabel = "FILE",
      converter = HabitsFile.class,
      description =
          "Phrases and habits of the department (what 14/16, OU and 0.8 mean there), and what holds"
              + " for its records: performer, setting, zone, hours, systems of ids.")
  private Habits habits = Habits.none();

  public Habits habits() {
    return habits;
  }
}
