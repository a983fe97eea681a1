package org.isopter.mapper.fhir;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;
import org.isopter.profiles.ProfileValidator;
import org.isopter.profiles.ValidationMessage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** What servers and senders put around findings is read over when FHIR allows it, and only then. */
class TransportTest {

  private static final JsonMapper MAPPER = new JsonMapper();
  private static final FhirReader READER = new FhirReader(Catalogue.standard());
  private static final ProfileValidator VALIDATOR = ProfileValidator.standard();
  private static final Exam EXAM = DerivedTest.demo("16-quarry-foreman.yaml");

  @ParameterizedTest(name = "{0} {1}: {2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          collection  | /id                       | "kept-by.a-server"
          collection  | /meta                     | {"lastUpdated": "2026-03-04T10:00:00.123+01:00"}
          collection  | /meta                     | {"tag": [{"system": "urn:here", "code": "a b"}]}
          collection  | /timestamp                | "2026-03-04T10:00:00Z"
          collection  | /entry/1/resource/id      | "3f"
          collection  | /entry/1/resource/meta    | {"versionId": "2", "source": "urn:somewhere"}
          collection  | /entry/1/resource/text/div | "<div xmlns=\\"http://www.w3.org/1999/xhtml\\" lang=\\"en\\">a &lt; b &#233;</div>"
          transaction | /entry/1/request          | {"method": "POST", "url": "Observation"}
          transaction | /entry/1/request/ifNoneExist | "identifier=a"
          """)
  void isReadOver(String kind, String at, String value) {
    String changed = changed(kind, at, value);
    assertEquals(EXAM, READER.read(changed).orThrow());
    assertEquals(List.of(), errors(changed));
  }

  @ParameterizedTest(name = "{0} {1}: {2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          collection  | /id                       | "not an id"
          collection  | /meta                     | {"lastUpdated": "yesterday"}
          collection  | /meta                     | {"remark": "left eye only"}
          collection  | /meta                     | {"tag": [{"colour": "red"}]}
          collection  | /type                     | "heap"
          collection  | /type                     | null
          collection  | /timestamp                | "2026-03-04"
          collection  | /entry/1/resource/id      | 3
          collection  | /entry/1/resource/meta    | {"versionId": "second version"}
          collection  | /entry/1/resource/text/div | "<div xmlns=\\"http://www.w3.org/1999/xhtml\\"> </div>"
          collection  | /entry/1/resource/text/div | "<div>right eye</div>"
          collection  | /entry/1/resource/text/div | "right eye"
          collection  | /entry/1/resource/text/div | "<div xmlns=\\"http://www.w3.org/1999/xhtml\\">a & b</div>"
          collection  | /entry/1/request          | {"method": "POST", "url": "Observation"}
          collection  | /entry/1/response         | {"status": "200"}
          collection  | /entry/1/search           | {"mode": "match"}
          collection  | /entry/2/fullUrl          | "urn:uuid:f44911f7-993--35c4-b896-60ee22752ed8"
          collection  | /entry/2/fullUrl          | "Observation/3"
          collection  | /entry/2/fullUrl          | "https://a.example/Observation/3/_history/1"
          collection  | /type                     | "document"
          document    | /identifier               | null
          document    | /timestamp                | null
          transaction | /entry/1/request          | null
          transaction | /entry/1/request          | {"method": "POST"}
          transaction | /entry/1/request          | {"method": "SEND", "url": "Observation"}
          transaction | /entry/1/request          | {"methodk": "POST", "url": "Observation"}
          """)
  void isRefusedAsTheValidatorDoes(String kind, String at, String value) {
    String changed = changed(kind, at, value);
    Result<Exam> read = READER.read(changed);
    assertNotEquals(List.of(), read.faults());
    assertNotEquals(List.of(), errors(changed), "the validator accepts what the reader refuses");
  }

  /** Returns the bundle with one element set, or without it for {@code null}. */
  private static String changed(String kind, String at, String value) {
    JsonNode root = MAPPER.readTree(FhirWriter.of(BundleKind.of(kind).orElseThrow()).write(EXAM));
    int last = at.lastIndexOf('/');
    ObjectNode holder = (ObjectNode) root.at(at.substring(0, last));
    String name = at.substring(last + 1);
    if (value.equals("null")) {
      holder.remove(name);
    } else {
      holder.set(name, MAPPER.readTree(value));
    }
    return MAPPER.writeValueAsString(root);
  }

  private static List<ValidationMessage> errors(String json) {
    return VALIDATOR.validate(json).stream().filter(ValidationMessage::isError).toList();
  }
}
