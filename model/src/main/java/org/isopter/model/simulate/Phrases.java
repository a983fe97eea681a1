package org.isopter.model.simulate;

import java.util.List;

/** Invented names, remarks and instruments: free text that must not leave with shared data. */
final class Phrases {

  static final List<String> FIRST =
      List.of(
          "Orsolin", "Maevy", "Tobren", "Isaude", "Corwick", "Lunette", "Bastian", "Yevka",
          "Fenella", "Hadrik", "Odalie", "Perrin", "Quilla", "Rusmir", "Sunniva", "Tamsel");

  static final List<String> LAST =
      List.of(
          "Brackenholt",
          "Duskwater",
          "Ferrowmere",
          "Gullane-Orr",
          "Harrowby-Lisk",
          "Islesworthy",
          "Kettlebrand",
          "Larkenfell",
          "Mossgrave",
          "Netherquay",
          "Oarsgate",
          "Pellinwood",
          "Quarrender",
          "Rookthorne",
          "Saltmarrow",
          "Tidewell");

  static final List<String> EXAMINERS =
      List.of(
          "Dr Wenna Thistlecombe",
          "Dr Osric Vane-Amadi",
          "Nurse Pilar Quenby",
          "Orthoptist Jory Elmstead",
          "Dr Sabeth Norrow",
          "Optometrist Eluned Crake");

  static final List<String> HEADER_REMARKS =
      List.of(
          "Came with a neighbour who keeps the ferry.",
          "Tired after a night on the harbour; tests kept short.",
          "Wears the spare glasses; the good pair fell overboard.",
          "Asks for a letter to the sail loft.",
          "Hard of hearing on the right; instructions written down.");

  static final List<String> ACUITY_REMARKS =
      List.of(
          "Tilts the head to read.",
          "Slow but sure.",
          "Guesses the last letters.",
          "Screws up the lids to read.");

  static final List<String> PRESSURE_REMARKS =
      List.of(
          "Squeezed the lids at first.",
          "Mean of three readings.",
          "Second try; the first was lost to a blink.");

  static final List<String> DISC_REMARKS =
      List.of(
          "Seen through a small pupil.",
          "Drawn on the sheet of the last visit.",
          "Short glimpse only; looks away from the light.");

  static final List<String> DEVICES =
      List.of(
          "Tonometer of room 3",
          "Hand-held tonometer, ward trolley 2",
          "Tonometer lent by the harbour clinic, no. 0417");

  private Phrases() {}
}
