package org.isopter.model.clinical.pupil;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.isopter.model.answer.pupil.PupilResponse;
import org.junit.jupiter.api.Test;

class LightNearDissociationTest {

  @Test
  void tellsLightNearDissociation() {
    assertEquals(Optional.of(true), dissociation(PupilResponse.ABSENT, PupilResponse.BRISK));
    assertEquals(Optional.of(true), dissociation(PupilResponse.SLUGGISH, PupilResponse.BRISK));
    assertEquals(Optional.of(false), dissociation(PupilResponse.BRISK, PupilResponse.BRISK));
    assertEquals(Optional.of(false), dissociation(PupilResponse.ABSENT, PupilResponse.ABSENT));
    assertEquals(Optional.empty(), dissociation(PupilResponse.SLUGGISH, PupilResponse.TONIC));
    assertEquals(Optional.of(true), dissociation(PupilResponse.ABSENT, PupilResponse.REACTIVE));
    assertEquals(Optional.of(false), dissociation(PupilResponse.BRISK, PupilResponse.REACTIVE));
    assertEquals(Optional.empty(), dissociation(PupilResponse.REACTIVE, PupilResponse.BRISK));
  }

  private static Optional<Boolean> dissociation(PupilResponse light, PupilResponse near) {
    return LightNearDissociation.of(light, near).value();
  }
}
