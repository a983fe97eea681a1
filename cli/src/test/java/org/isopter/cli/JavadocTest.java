package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.LambdaExpressionTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ThrowTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePathScanner;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.lang.model.element.Modifier;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What the Javadoc of a public method says: that it is there, which exceptions it may meet, the
 * unit of a clinical number, and the source of a clinical function.
 */
class JavadocTest {

  private static final List<String> MODULES = List.of("model", "mapper", "profiles", "cli/task");
  private static final Pattern NUMBER =
      Pattern.compile(
          "(Optional<)?(double|int|long|BigDecimal|Double|Integer)>?|Optional(Int|Double)");
  private static final Pattern UNIT =
      Pattern.compile(
          "(?i)dioptre|degree|minute|metre|\\bmm\\b|logMAR|mmHg|decimal|letter|category|how many|number");
  private static final Pattern SOURCE =
      Pattern.compile(
          "Citation|Sources\\.|SOURCE|(?i:source)|common practice|from memory|by definition");

  /** Values that carry what was seen; nothing is worked out in them. */
  private static final Set<String> CARRIERS =
      Set.of("EyeField", "FieldDetails", "FieldShape", "FieldSigns", "PupilSigns");

  private static final List<Method> METHODS = new ArrayList<>();

  /** A public method with its comment, empty where it has none. */
  private record Method(Path file, String type, MethodTree tree, String comment) {
    String place() {
      return type + "." + tree.getName();
    }

    boolean isClinical() {
      return file.toString().contains("clinical");
    }

    /** Returns what it declares to throw, and what its own lines throw. */
    Set<String> thrown() {
      Set<String> names = new TreeSet<>();
      tree.getThrows().stream().map(ExpressionTree::toString).forEach(names::add);
      tree.accept(new Throws(), names);
      return names;
    }
  }

  private static final class Throws extends TreeScanner<Void, Set<String>> {
    @Override
    public Void visitThrow(ThrowTree thrown, Set<String> names) {
      if (thrown.getExpression() instanceof NewClassTree made) {
        names.add(made.getIdentifier().toString());
      }
      return super.visitThrow(thrown, names);
    }

    @Override
    public Void visitLambdaExpression(LambdaExpressionTree later, Set<String> names) {
      return null;
    }

    @Override
    public Void visitClass(ClassTree other, Set<String> names) {
      return null;
    }
  }

  /** Collects the public methods of public types; those that override have their comment there. */
  private static final class Methods extends TreePathScanner<Void, CompilationUnitTree> {
    private final DocTrees comments;

    Methods(DocTrees comments) {
      this.comments = comments;
    }

    @Override
    public Void visitClass(ClassTree type, CompilationUnitTree unit) {
      boolean open =
          type.getModifiers().getFlags().contains(Modifier.PUBLIC)
              || type.getKind() == Tree.Kind.INTERFACE
              || (getCurrentPath().getParentPath().getLeaf() instanceof ClassTree outer
                  && outer.getKind() == Tree.Kind.INTERFACE);
      return open ? super.visitClass(type, unit) : null;
    }

    @Override
    public Void visitMethod(MethodTree method, CompilationUnitTree unit) {
      boolean plain =
          method.getReturnType() != null
              && method.getModifiers().getFlags().contains(Modifier.PUBLIC)
              && method.getModifiers().getAnnotations().stream()
                  .noneMatch(one -> one.getAnnotationType().toString().equals("Override"));
      if (plain) {
        String comment = Optional.ofNullable(comments.getDocComment(getCurrentPath())).orElse("");
        ClassTree type = (ClassTree) getCurrentPath().getParentPath().getLeaf();
        METHODS.add(
            new Method(
                Path.of(unit.getSourceFile().toUri()),
                type.getSimpleName().toString(),
                method,
                comment));
      }
      return null;
    }
  }

  @BeforeAll
  static void parse() throws IOException {
    var compiler = ToolProvider.getSystemJavaCompiler();
    try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, UTF_8)) {
      JavacTask task =
          (JavacTask)
              compiler.getTask(
                  null,
                  files,
                  null,
                  List.of("-proc:none"),
                  null,
                  files.getJavaFileObjectsFromPaths(sources()));
      Methods methods = new Methods(DocTrees.instance(task));
      for (CompilationUnitTree unit : task.parse()) {
        methods.scan(unit, unit);
      }
    }
  }

  private static List<Path> sources() throws IOException {
    List<Path> all = new ArrayList<>();
    for (String module : MODULES) {
      try (Stream<Path> files = Files.walk(Path.of(module, "src/main/java"))) {
        files.filter(file -> file.toString().endsWith(".java")).forEach(all::add);
      }
    }
    return all;
  }

  private static List<String> places(Predicate<Method> which) {
    return METHODS.stream().filter(which).map(Method::place).toList();
  }

  @Test
  void everyPublicMethodSaysWhatItDoes() {
    assertTrue(METHODS.size() > 1200, "only " + METHODS.size() + " methods were found");
    assertEquals(List.of(), places(method -> method.comment().isBlank()));
  }

  @Test
  void everyExceptionIsNamed() {
    assertEquals(
        List.of(),
        METHODS.stream()
            .flatMap(
                method ->
                    method.thrown().stream()
                        .filter(name -> !method.comment().contains("@throws " + name))
                        .map(name -> method.place() + " throws " + name))
            .toList());
  }

  @Test
  void everyClinicalNumberHasItsUnit() {
    assertEquals(
        List.of(),
        places(
            method ->
                method.isClinical()
                    && NUMBER.matcher(method.tree().getReturnType().toString()).matches()
                    && !UNIT.matcher(method.comment()).find()));
  }

  @Test
  void everyClinicalFunctionHasItsSource() throws IOException {
    Set<String> bare = new TreeSet<>();
    for (Method method : METHODS) {
      boolean function =
          method.isClinical() && method.tree().getModifiers().getFlags().contains(Modifier.STATIC);
      if (function && !SOURCE.matcher(Files.readString(method.file())).find()) {
        bare.add(method.type());
      }
    }
    assertEquals(CARRIERS, bare);
  }
}
