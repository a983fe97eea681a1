package org.isopter.mapper.person;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.table.Person;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a study's own file says of its persons. */
class PersonsFileTest {

  @TempDir Path folder;

  @Test
  void addsAgeSexAndGroupToThePersonWithTheIdentifier() throws IOException {
    PersonsFile file = file("id,birth_date,sex,group\np-1,1950-06-01,female,treated\np-2,,,\n");
    Person known = file.apply(exam("p-1", Optional.of("urn:x"))).person();
    assertEquals(Optional.of(75), known.age());
    assertEquals(Optional.of("female"), known.sex());
    assertEquals(Optional.of("treated"), known.group());
    assertEquals(Person.UNKNOWN, file.apply(exam("p-9", Optional.empty())).person());
    assertEquals(List.of(2, 1), List.of(file.size(), file.found()));
  }

  @Test
  void comparesTheSystemWhereTheFileHasOne() throws IOException {
    PersonsFile file = file("id,system,birth_year\np-1,urn:x,1950\n");
    assertTrue(file.apply(exam("p-1", Optional.of("urn:x"))).person().age().isPresent());
    assertFalse(file.apply(exam("p-1", Optional.of("urn:y"))).person().age().isPresent());
    assertFalse(file.apply(exam("p-1", Optional.empty())).person().age().isPresent());
  }

  @Test
  void takesAYearForItsMiddleAndPutsTheFileBeforeThePatient() throws IOException {
    PersonsFile file = file("id,birth_year\np-1,1950\n");
    PooledExam of = exam("p-1", Optional.empty());
    Person patient =
        Person.born(
            Optional.of(LocalDate.of(1960, 1, 1)),
            Optional.of("male"),
            of.exam().header().performed().toLocalDate());
    Person known = file.apply(of.with(of.exam(), patient)).person();
    assertEquals(Optional.of(75), known.age());
    // The file says nothing of the sex.
    assertEquals(Optional.of("male"), known.sex());
  }

  /** As tables are saved elsewhere: a mark of the order of bytes, semicolons, lines of Windows. */
  @Test
  void readsOtherFormsOfTheSame() throws IOException {
    for (String text :
        List.of(
            "\ufeffid,sex\np-1,female\n",
            "id;sex\r\np-1;female\r\n",
            "id\tsex\np-1\tfemale\n",
            "sex,id\nfemale,\"p-1\"\n")) {
      Person known = file(text).apply(exam("p-1", Optional.empty())).person();
      assertEquals(Optional.of("female"), known.sex(), text);
    }
  }

  @Test
  void refusesWhatItCannotUnderstandWithoutShowingIt() {
    for (String text :
        List.of(
            "id,name\nQuarrender,Quilla\n",
            "name\nQuarrender\n",
            "id,birth_year\nQuarrender,Quarrender\n",
            "id,birth_year\nQuarrender,50\n",
            "id,birth_date\nQuarrender,1950-13-01\n",
            "id,sex\nQuarrender,f\n",
            "id,sex\n,male\n",
            "Quarrender,male\nOther,female\n",
            "id,Quarrender\np-1,x\n",
            "id,sex\n\"Quarrender,male\n",
            "id,sex\nQuarrender,male\nQuarrender,female\n",
            "id,group\nQuarrender,\"Quarrender, whom everybody in the village knows well\"\n")) {
      FaultException refused = assertThrows(FaultException.class, () -> file(text), text);
      assertFalse(refused.getMessage().contains("Quarrender"), refused.getMessage());
    }
  }

  private PersonsFile file(String text) throws IOException {
    return PersonsFile.read(Files.writeString(folder.resolve("persons.csv"), text));
  }

  private static PooledExam exam(String id, Optional<String> system) {
    Party person = Party.of(new Identifier(system, id));
    java.time.OffsetDateTime at = java.time.OffsetDateTime.parse("2026-03-03T09:10:00Z");
    Exam exam = new Exam(Header.of(Identifier.of("r-1"), person, at), List.of());
    return new PooledExam(exam, Person.UNKNOWN, List.of());
  }
}
