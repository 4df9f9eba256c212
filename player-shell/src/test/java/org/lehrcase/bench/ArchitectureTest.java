package org.lehrcase.bench;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** What the bench must never reach. */
@AnalyzeClasses(packages = "org.lehrcase", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule THE_BENCH_NEVER_SEES_THE_DESK =
      noClasses()
          .that()
          .resideInAPackage("org.lehrcase.bench..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.lehrcase.desk..");

  @ArchTest
  static final ArchRule THE_BENCH_CANNOT_DERIVE_A_MASTER_KEY =
      noClasses()
          .that()
          .resideInAPackage("org.lehrcase.bench..")
          .should()
          .dependOnClassesThat()
          .haveNameMatching(".*\\.(RootSecret|MasterKey|ThresholdShares|PassphraseBox)");

  @ArchTest
  static final ArchRule ONLY_THE_STORE_AND_THE_SEARCH_SPEAK_SQL =
      noClasses()
          .that()
          .resideInAPackage("org.lehrcase.bench..")
          .and()
          .resideOutsideOfPackages("..bench.store..", "..bench.find..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("java.sql..");

  @ArchTest
  static final ArchRule CIPHERS_STAY_IN_CORE =
      noClasses()
          .that()
          .resideInAPackage("org.lehrcase.bench..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("javax.crypto..", "org.bouncycastle..");

  @ArchTest
  static final ArchRule NO_ROOM_WITHOUT_A_SUBJECT =
      noClasses()
          .that()
          .resideInAPackage("org.lehrcase.bench..")
          .should()
          .resideInAnyPackage("..util..", "..utils..", "..common..", "..helper..", "..impl..")
          .allowEmptyShould(false);
}
