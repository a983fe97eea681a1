package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apiguardian.api.API;
import org.junit.jupiter.api.Test;

/**
 * The public API: the public classes of the packages that are marked as such. What it consists of
 * is kept as a list, so that nothing in it changes unseen; whoever changes it on purpose writes the
 * list anew with {@code -Dgolden=update} and reads the difference.
 */
class ApiTest {

  private static final Path LIST = Path.of("cli/src/test/resources/api.txt");

  @Test
  void isAsListed() throws IOException {
    String now = api().flatMap(ApiTest::lines).sorted().collect(Collectors.joining("\n", "", "\n"));
    if ("update".equals(System.getProperty("golden"))) {
      Files.writeString(LIST, now, UTF_8);
    }
    assertEquals(Files.readString(LIST, UTF_8), now);
  }

  @Test
  void speaksOnlyOfItself() {
    Set<String> leaks =
        api()
            .flatMap(ApiTest::visible)
            .flatMap(
                member ->
                    mentioned(member)
                        .filter(ApiTest::isHidden)
                        .map(type -> member.getFullName() + " mentions " + type.getSimpleName()))
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(Set.of(), leaks);
  }

  private static Stream<JavaClass> api() {
    return OurClasses.ALL.stream().filter(ApiTest::isApi);
  }

  private static boolean isApi(JavaClass type) {
    return isPublic(type)
        && (type.getPackage().isAnnotatedWith(API.class) || type.isAnnotatedWith(API.class));
  }

  private static boolean isHidden(JavaClass type) {
    return type.getPackageName().startsWith("org.isopter") && !isApi(type);
  }

  private static boolean isPublic(JavaClass type) {
    return type.getModifiers().contains(JavaModifier.PUBLIC)
        && type.getEnclosingClass().map(ApiTest::isPublic).orElse(true);
  }

  private static Stream<JavaMember> visible(JavaClass type) {
    return type.getMembers().stream()
        .filter(
            member ->
                member.getModifiers().contains(JavaModifier.PUBLIC)
                    || member.getModifiers().contains(JavaModifier.PROTECTED))
        .filter(member -> !member.getModifiers().contains(JavaModifier.SYNTHETIC))
        .filter(member -> !member.isAnnotatedWith(API.class));
  }

  private static Stream<JavaClass> mentioned(JavaMember member) {
    if (member instanceof JavaField field) {
      return field.getType().getAllInvolvedRawTypes().stream();
    }
    JavaCodeUnit unit = (JavaCodeUnit) member;
    return Stream.concat(Stream.of(unit.getReturnType()), unit.getParameterTypes().stream())
        .map(JavaType::getAllInvolvedRawTypes)
        .flatMap(Set::stream);
  }

  private static Stream<String> lines(JavaClass type) {
    return visible(type).map(member -> line(type, member));
  }

  private static String line(JavaClass type, JavaMember member) {
    String name = type.getName() + "#" + member.getName();
    if (member instanceof JavaField field) {
      return name + " : " + shown(field.getType());
    }
    JavaCodeUnit unit = (JavaCodeUnit) member;
    return name
        + unit.getParameterTypes().stream()
            .map(ApiTest::shown)
            .collect(Collectors.joining(", ", "(", ")"))
        + " : "
        + shown(unit.getReturnType());
  }

  private static String shown(JavaType type) {
    return type.getName().replaceAll("\\b(?:[a-z]\\w*\\.)+", "");
  }
}
