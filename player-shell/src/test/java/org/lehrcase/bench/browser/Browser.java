package org.lehrcase.bench.browser;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/** A headless Chromium with a profile of its own. Close it; it ends its own processes. */
public final class Browser implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private final ChromeDriver driver;

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /**
   * Starts a browser.
   *
   * @param profile an empty folder for its profile and caches
   * @param widthPixels width of the window
   * @param heightPixels height of the window
   * @return the browser
   */
  public static Browser start(Path profile, int widthPixels, int heightPixels) {
    return start(profile, widthPixels, heightPixels, List.of());
  }

  /**
   * Starts a browser whose camera shows a film of raw frames, and is allowed to every page.
   *
   * @param profile an empty folder for its profile and caches
   * @param widthPixels width of the window
   * @param heightPixels height of the window
   * @param camera the film, read anew each time that a page switches the camera on
   * @return the browser
   */
  public static Browser startWithCamera(
      Path profile, int widthPixels, int heightPixels, Path camera) {
    return start(
        profile,
        widthPixels,
        heightPixels,
        List.of(
            "--use-fake-device-for-media-stream",
            "--use-fake-ui-for-media-stream",
            "--use-file-for-fake-video-capture=" + camera));
  }

  private static Browser start(
      Path profile, int widthPixels, int heightPixels, List<String> further) {
    System.setProperty("SE_OFFLINE", "true");
    InstalledChromium installed = InstalledChromium.find();
    ChromeOptions options = new ChromeOptions();
    options.setBinary(installed.browser().toString());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--disable-dev-shm-usage",
        "--autoplay-policy=no-user-gesture-required",
        "--user-data-dir=" + profile,
        "--window-size=" + widthPixels + "," + heightPixels);
    options.addArguments(further);
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(installed.driver().toFile())
            .usingAnyFreePort()
            .build();
    return new Browser(new ChromeDriver(service, options));
  }

  /**
   * Returns the driver, for what this class has no word for.
   *
   * @return the driver
   */
  public ChromeDriver driver() {
    return driver;
  }

  /**
   * Goes to an address.
   *
   * @param address http or file address
   */
  public void go(String address) {
    driver.get(address);
  }

  /**
   * Runs a script in the page.
   *
   * @param script body of a function
   * @param arguments its arguments
   * @return what the script returns
   */
  public Object run(String script, Object... arguments) {
    return ((JavascriptExecutor) driver).executeScript(script, arguments);
  }

  /**
   * Runs a script that calls its last argument back.
   *
   * @param script body of a function
   * @param arguments its arguments
   * @return what the script passed to the callback
   */
  public Object runAsync(String script, Object... arguments) {
    driver.manage().timeouts().scriptTimeout(PATIENCE);
    return ((JavascriptExecutor) driver).executeAsyncScript(script, arguments);
  }

  /**
   * Waits for an element.
   *
   * @param css its selector
   * @return the element, once it is there and shown
   */
  public WebElement see(String css) {
    return get(
        "a visible " + css,
        () -> {
          try {
            return driver.findElements(By.cssSelector(css)).stream()
                .filter(WebElement::isDisplayed)
                .findFirst()
                .orElse(null);
          } catch (StaleElementReferenceException e) {
            return null;
          }
        });
  }

  /**
   * Waits for a condition.
   *
   * @param what what is waited for, for the message
   * @param condition asked again and again
   */
  public void until(String what, BooleanSupplier condition) {
    get(what, () -> condition.getAsBoolean() ? Boolean.TRUE : null);
  }

  /**
   * Waits for a value.
   *
   * @param <T> the type of the value
   * @param what what is waited for, for the message
   * @param value asked until it is not null
   * @return the value
   */
  public <T> T get(String what, Supplier<T> value) {
    long deadlineNanos = System.nanoTime() + PATIENCE.toNanos();
    while (System.nanoTime() < deadlineNanos) {
      T found = value.get();
      if (found != null) {
        return found;
      }
      LockSupport.parkNanos(50_000_000L);
    }
    throw new AssertionError(
        "waited " + PATIENCE + " for " + what + " at " + driver.getCurrentUrl());
  }

  /** Keeps what was on the screen, beside the test reports. */
  private void photograph() {
    try {
      Path folder = Files.createDirectories(Path.of("target", "failure-screens"));
      Files.write(
          folder.resolve(System.currentTimeMillis() + ".png"),
          driver.getScreenshotAs(OutputType.BYTES));
    } catch (IOException e) {
      throw new UncheckedIOException("the screenshot could not be kept", e);
    }
  }

  @Override
  public void close() {
    driver.quit();
  }
}
