package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The commands at a terminal, with the keys of a keyboard and what then stands on the screen. */
@Timeout(60)
class TerminalTest {

  private static final String BACKSPACE = "\177";
  private static final String UP = "\033OA";
  private static final String LEFT = "\033OD";
  private static final String BREAK = "\003";
  private static final String END_OF_INPUT = "\004";

  @TempDir Path folder;

  private String[] examine() {
    return new String[] {"examine", "--subject", "p-1", "--output", folder.resolve("v") + ""};
  }

  private String record() throws IOException {
    return Files.readString(folder.resolve("v.yaml"));
  }

  @Test
  void goesThroughAnExaminationWithEditedLines() throws Exception {
    try (Sitting sitting = Sitting.of(examine())) {
      sitting.awaits("acuity: ").types("sc each 6/9" + BACKSPACE + "6\r");
      sitting.awaits("recorded, each eye: Distance visual acuity: 6/6 unaided");
      sitting.awaits("pinhole: ").types("b\r");
      sitting.awaits("So far: VA sc each 6/6.").awaits("acuity: ");
      sitting.types(UP + UP + LEFT + LEFT + LEFT + BACKSPACE + "R 6 L 6\r");
      sitting.awaits("not read").awaits("acuity: ");
      sitting.types(UP + UP + UP + BACKSPACE + "5\r").awaits("6/5 unaided").awaits("pinhole: ");
      sitting.types("\r").awaits("near: ").types("x refused\r").awaits("declined");
      for (String step : new String[] {"pupils", "afferent defect"}) {
        sitting.awaits(step + ": ").types("n\r");
      }
      sitting.awaits("colour: ").types("15/15, 4/15\r").awaits("1 = ").awaits("colour: ");
      sitting.types("1\r").awaits("15 of 15");
      for (String step : new String[] {"red", "blind spot", "fields", "disc", "lids"}) {
        sitting.awaits(step + ": ").types("n\r");
      }
      sitting.awaits("pressure: ").types("R 14 L 15 GAT\r");
      sitting.awaits("movements: ").types("n\r").awaits("end: ").types("\r");
      assertEquals(ExitStatus.OK, sitting.status());
    }
    assertTrue(record().contains("6/5") && !record().contains("6/6"), record());
    assertTrue(record().contains("refused"), record());
    assertEquals(ExitStatus.OK, Run.of("check", folder.resolve("v.yaml") + "").status());
  }

  @Test
  void keepsADraftWhenItIsBrokenOff() throws Exception {
    for (String key : new String[] {BREAK, END_OF_INPUT}) {
      try (Sitting sitting = Sitting.of(examine())) {
        sitting.awaits("For instance").awaits(": ").types("sc each 6/6\r").awaits("recorded");
        sitting.awaits("For instance").awaits(": ").types(key).awaits("Kept as a draft");
        assertEquals(ExitStatus.REFUSED, sitting.status());
      }
      assertTrue(Files.readString(folder.resolve("v.draft")).contains("VA sc each 6/6"));
      assertFalse(Files.exists(folder.resolve("v.yaml")));
    }
  }

  @Test
  void leavesNoLineOpenForAQuoteOrABackslash() throws Exception {
    try (Sitting sitting = Sitting.of(examine())) {
      sitting.awaits("acuity: ").types("stereo 60\" TNO\r").awaits("60 arcsec");
      sitting.awaits("acuity is still open").awaits("acuity: ").types("6/6 \\\r");
      sitting.awaits("not read: \"VA 6/6 \\\"").awaits("acuity: ").types(BREAK);
      assertEquals(ExitStatus.REFUSED, sitting.status());
    }
  }

  @Test
  void asksAboutANote() throws Exception {
    try (Sitting sitting = Sitting.of("note", "IOP 14/16", "--subject", "p-1")) {
      sitting.awaits("2 = IOP R 16 L 14").awaits("unread: ").types("7\r");
      sitting.awaits("1 to 2").awaits("unread: ").types("2\r");
      assertEquals(ExitStatus.OK, sitting.status());
      assertTrue(sitting.out().contains("right: 16 mmHg"), sitting.out());
    }
  }

  /** What is drawn is the line alone: no colour, no window, nothing beside it. */
  @Test
  void drawsNothingThatAScreenReaderCannotRead() throws Exception {
    try (Sitting sitting = Sitting.of(examine())) {
      sitting.awaits("acuity: ").types("sc each 6/6\r").awaits("pinhole: ").types(BREAK);
      assertEquals(ExitStatus.REFUSED, sitting.status());
      assertFalse(sitting.screen().contains("\033[3"), "colour");
      assertFalse(sitting.screen().contains("\033[H"), "cursor sent to a place");
      assertFalse(sitting.screen().contains("\033[?1049h"), "another screen");
    }
  }
}
