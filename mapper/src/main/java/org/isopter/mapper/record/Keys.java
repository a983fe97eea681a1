package org.isopter.mapper.record;

import java.util.List;
import org.isopter.model.shape.Part;

/** The keys of a record that are the same for every finding. */
final class Keys {

  /** The version of the format that this program writes and reads. */
  static final int VERSION = 1;

  static final String ISOPTER = "isopter";
  static final String RECORD = "record";
  static final String SUBJECT = "subject";
  static final String PERFORMER = "performer";
  static final String PERFORMED = "performed";
  static final String STATUS = "status";
  static final String SETTING = "setting";
  static final String AMENDS = "amends";
  static final String REMARK = "remark";
  static final String FINDINGS = "findings";

  static final String ID = "id";
  static final String SYSTEM = "system";
  static final String NAME = "name";

  static final String VALUE = Part.VALUE;
  static final String ABSENT = "absent";
  static final String METHOD = "method";
  static final String AT = "at";
  static final String DEVICE = "device";
  static final String REMARKS = "remarks";

  static final List<String> OF_A_RECORD =
      List.of(
          ISOPTER, RECORD, SUBJECT, PERFORMER, PERFORMED, STATUS, SETTING, AMENDS, REMARK,
          FINDINGS);

  static final List<String> OF_AN_ENTRY = List.of(VALUE, ABSENT, METHOD, AT, DEVICE, REMARKS);

  private Keys() {}
}
