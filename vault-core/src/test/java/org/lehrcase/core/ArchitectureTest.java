package org.lehrcase.core;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The arrows inside vault-core, and the few rooms that may touch a cipher. */
@AnalyzeClasses(
    packages = "org.lehrcase.core",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule ROOMS_DO_NOT_FORM_A_RING =
      slices().matching("org.lehrcase.core.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule THE_CIPHER_LIBRARY_STAYS_BEHIND_ITS_DOORS =
      noClasses()
          .that()
          .resideOutsideOfPackage("..core.primitive..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.bouncycastle..");

  @ArchTest
  static final ArchRule ONLY_PRIMITIVE_AND_SEAL_USE_THE_PLATFORM_CIPHERS =
      noClasses()
          .that()
          .resideOutsideOfPackages("..core.primitive..", "..core.seal..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("javax.crypto..");

  @ArchTest
  static final ArchRule NONCES_ARE_BUILT_ONLY_WHERE_SEALING_HAPPENS =
      noClasses()
          .that()
          .resideOutsideOfPackages("..core.primitive..", "..core.seal..")
          .should()
          .dependOnClassesThat()
          .haveNameMatching("javax.crypto.spec.*ParameterSpec");

  @ArchTest
  static final ArchRule CORE_HAS_NO_DATABASE_SERVER_OR_SCREEN =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.sql..", "org.eclipse.jetty..", "java.awt..", "javax.swing..");

  @ArchTest
  static final ArchRule KEYS_DEPEND_ON_NOTHING_ABOVE_THEM =
      classes()
          .that()
          .resideInAnyPackage("..core.id..", "..core.primitive..", "..core.keys..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "java..",
              "javax.crypto..",
              "org.bouncycastle..",
              "org.jspecify..",
              "org.lehrcase.core",
              "..core.id..",
              "..core.primitive..",
              "..core.keys..");

  @ArchTest
  static final ArchRule A_SECRET_IS_NEVER_A_RECORD =
      classes().that().resideInAPackage("..core.keys..").should().notBeAssignableTo(Record.class);

  @ArchTest
  static final ArchRule NO_ROOM_WITHOUT_A_SUBJECT =
      noClasses()
          .should()
          .resideInAnyPackage("..util..", "..utils..", "..common..", "..helper..", "..impl..");
}
