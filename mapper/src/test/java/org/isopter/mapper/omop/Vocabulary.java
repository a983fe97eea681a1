package org.isopter.mapper.omop;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A small vocabulary whose ids are invented; codes and domains are those of the real ones. */
final class Vocabulary {

  static final String HEADER =
      "concept_id\tconcept_name\tdomain_id\tvocabulary_id\tconcept_class_id\tstandard_concept"
          + "\tconcept_code\tvalid_start_date\tvalid_end_date\tinvalid_reason";

  private static final List<String> CONCEPTS =
      List.of(
          concept(0, "No matching concept", "Metadata", "None", "", "No matching concept"),
          concept(901, "Pressure right", "Measurement", "LOINC", "S", "79892-6"),
          concept(902, "Intraocular pressure", "Observation", "SNOMED", "", "41633001"),
          concept(903, "mmHg", "Unit", "UCUM", "S", "mm[Hg]"),
          concept(904, "EHR", "Type Concept", "Type Concept", "S", "OMOP4976890"),
          concept(905, "measurement.measurement_id", "Metadata", "CDM", "S", "CDM1"),
          concept(906, "Right \"eye\"", "Spec Anatomic Site", "SNOMED", "S", "362502000"),
          concept(907, "Laterality", "Observation", "SNOMED", "S", "272741003"),
          concept(908, "observation.observation_id", "Metadata", "CDM", "S", "CDM2"),
          concept(
              909, "condition_occurrence.condition_occurrence_id", "Metadata", "CDM", "S", "CDM3"),
          concept(910, "Male", "Gender", "Gender", "S", "M"),
          concept(911, "Female", "Gender", "Gender", "S", "F"),
          concept(912, "Outpatient Visit", "Visit", "Visit", "S", "OP"),
          concept(913, "Inpatient Visit", "Visit", "Visit", "S", "IP"),
          concept(914, "Afferent pupillary defect", "Condition", "SNOMED", "S", "232121005"),
          concept(915, "Optic disc swelling", "Condition", "SNOMED", "S", "248487006"),
          concept(916, "Power of sphere", "Measurement", "SNOMED", "S", "251795007"),
          concept(917, "Power of cylinder, old", "Observation", "SNOMED", "", "251797004"),
          concept(918, "Power of cylinder", "Measurement", "LOINC", "S", "invented"),
          concept(919, "Ptosis of eyelid", "Condition", "SNOMED", "S", "11934000"),
          concept(920, "Size of pupil, two", "Observation", "SNOMED", "", "363953003"),
          concept(921, "Venous pulsation", "Condition", "SNOMED", "S", "247230002"),
          concept(922, ">", "Meas Value Operator", "SNOMED", "S", "276138003"),
          concept(923, "<", "Meas Value Operator", "SNOMED", "S", "276139006"));

  private static final List<String> RELATIONSHIPS =
      List.of(
          "concept_id_1\tconcept_id_2\trelationship_id\tvalid_start_date\tvalid_end_date\tinvalid_reason",
          "917\t918\tMaps to\t19700101\t20991231\t",
          // Withdrawn: it maps to nothing.
          "902\t901\tMaps to\t19700101\t20991231\tD",
          // Two at once: neither holds the value.
          "920\t916\tMaps to\t19700101\t20991231\t",
          "920\t918\tMaps to\t19700101\t20991231\t");

  private Vocabulary() {}

  static Path write(Path folder) throws IOException {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("CONCEPT.csv"), text() + "\n");
    Files.writeString(
        folder.resolve("CONCEPT_RELATIONSHIP.csv"), String.join("\n", RELATIONSHIPS) + "\n");
    return folder;
  }

  static String text() {
    return HEADER + "\n" + String.join("\n", CONCEPTS);
  }

  private static String concept(
      int id, String name, String domain, String vocabulary, String standard, String code) {
    return String.join(
        "\t",
        Integer.toString(id),
        name,
        domain,
        vocabulary,
        "Invented",
        standard,
        code,
        "19700101",
        "20991231",
        "");
  }
}
