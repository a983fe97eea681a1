package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.ForeignWriter;
import org.isopter.mapper.hapi.FhirXml;
import org.isopter.mapper.hapi.HapiBundles;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.check.Consistency;
import org.isopter.model.compare.Comparison;
import org.isopter.model.derive.Derivations;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.NoteWriter;
import org.isopter.model.value.Quantity;
import org.isopter.profiles.ProfileValidator;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Null where a value belongs says at once what is missing. */
class NullsTest {

  private static final List<Class<?>> ENTRANCES =
      List.of(
          RecordReader.class,
          FhirReader.class,
          FhirWriter.class,
          ForeignReader.class,
          ForeignWriter.class,
          FhirXml.class,
          HapiBundles.class,
          ProfileValidator.class,
          Exam.class,
          ExamView.class,
          Fact.class,
          Quantity.class,
          NoteReader.class,
          NoteWriter.class,
          Consistency.class,
          Derivations.class,
          Comparison.class);

  @TestFactory
  Stream<DynamicTest> nameWhatIsMissing() {
    return ENTRANCES.stream()
        .flatMap(type -> Stream.concat(statics(type), Arrays.stream(type.getConstructors())))
        .filter(made -> Arrays.stream(made.getParameterTypes()).anyMatch(t -> !t.isPrimitive()))
        .map(made -> DynamicTest.dynamicTest(made.toGenericString(), () -> names(made)));
  }

  private static Stream<Executable> statics(Class<?> type) {
    return Arrays.stream(type.getMethods())
        .filter(method -> Modifier.isStatic(method.getModifiers()))
        .map(Executable.class::cast);
  }

  private static void names(Executable made) throws ReflectiveOperationException {
    Object[] nothing = new Object[made.getParameterCount()];
    try {
      if (made instanceof Method method) {
        method.invoke(null, nothing);
      } else {
        ((Constructor<?>) made).newInstance(nothing);
      }
      throw new AssertionError("took null");
    } catch (InvocationTargetException thrown) {
      Throwable cause = thrown.getCause();
      assertInstanceOf(NullPointerException.class, cause);
      String message = String.valueOf(cause.getMessage());
      boolean named =
          Arrays.stream(made.getParameters())
              .map(Parameter::getName)
              .anyMatch(
                  name -> message.equals(name) || message.contains("\"" + name + "\" is null"));
      assertTrue(named || message.contains(" needs a"), message);
    }
  }
}
