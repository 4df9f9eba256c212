package org.lehrcase.desk;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The arrows of the desk. */
@AnalyzeClasses(packages = "org.lehrcase", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule NOTHING_DEPENDS_ON_THE_DESK =
      noClasses()
          .that()
          .resideOutsideOfPackage("org.lehrcase.desk..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.lehrcase.desk..");

  @ArchTest
  static final ArchRule ONLY_THE_SALES_BOOK_SPEAKS_SQL =
      noClasses()
          .that()
          .resideInAPackage("org.lehrcase.desk..")
          .and()
          .resideOutsideOfPackage("..desk.sales..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("java.sql..");

  @ArchTest
  static final ArchRule THE_SALES_BOOK_HOLDS_NO_KEY =
      noClasses()
          .that()
          .resideInAPackage("..desk.sales..")
          .should()
          .dependOnClassesThat()
          .haveNameMatching(
              "org\\.lehrcase\\.core\\.(keys\\.[A-Z].*|primitive\\.(SecretBytes|SigningKey))");

  @ArchTest
  static final ArchRule CIPHERS_STAY_IN_CORE =
      noClasses()
          .that()
          .resideInAPackage("org.lehrcase.desk..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("javax.crypto..", "org.bouncycastle..");

  @ArchTest
  static final ArchRule THE_READER_OF_COURSES_KNOWS_NO_KEY =
      noClasses()
          .that()
          .resideInAnyPackage("..desk.author..", "..desk.media..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("..core.keys..", "..desk.pack..", "..desk.sales..");
}
