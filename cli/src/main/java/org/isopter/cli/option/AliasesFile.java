package org.isopter.cli.option;

import java.io.IOException;
import org.isopter.mapper.foreign.vocabulary.DepartmentAliases;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Result;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the lines about FHIR in a file of habits, and says at once what is wrong with them. */
public final class AliasesFile implements ITypeConverter<DepartmentAliases> {

  @Override
  public DepartmentAliases convert(String file) throws IOException {
    Result<DepartmentAliases> aliases =
        DepartmentAliases.of(new HabitsFile().convert(file).fhir(), Catalogue.standard());
    if (!aliases.isOk()) {
      throw new TypeConversionException(file + ": " + aliases.faults().get(0));
    }
    return aliases.orThrow();
  }
}
