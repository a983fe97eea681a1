package org.isopter.mapper.record;

import java.util.List;
import org.isopter.model.finding.Part;

/** The keys of a record that are the same for every finding. */
public final class Keys {

  /** The version of the format that this program writes and reads. */
  public static final int VERSION = 1;

  public static final String ISOPTER = "isopter";
  public static final String RECORD = "record";
  public static final String SUBJECT = "subject";
  public static final String PERFORMER = "performer";
  public static final String PERFORMED = "performed";
  public static final String STATUS = "status";
  public static final String SETTING = "setting";
  public static final String AMENDS = "amends";
  public static final String REMARK = "remark";
  public static final String FINDINGS = "findings";

  public static final String ID = "id";
  public static final String SYSTEM = "system";
  public static final String NAME = "name";

  public static final String VALUE = Part.VALUE;
  public static final String ABSENT = "absent";
  public static final String METHOD = "method";
  public static final String AT = "at";
  public static final String DEVICE = "device";
  public static final String REMARKS = "remarks";

  static final List<String> OF_A_RECORD =
      List.of(
          ISOPTER, RECORD, SUBJECT, PERFORMER, PERFORMED, STATUS, SETTING, AMENDS, REMARK,
          FINDINGS);

  static final List<String> OF_AN_ENTRY = List.of(VALUE, ABSENT, METHOD, AT, DEVICE, REMARKS);

  private Keys() {}
}
