package mainsgap.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * The streams of a command. Results go to {@code out}; progress, prompts and complaints to {@code
 * err}, so that a script that reads the results meets nothing else.
 *
 * @param charset in which both are written
 * @param personAtInput whether a person may be at {@code in}, rather than a file or a pipe
 */
record Terminal(
    PrintStream out, PrintStream err, InputStream in, Charset charset, boolean personAtInput) {

  /** The process's own streams. */
  static Terminal ofProcess() {
    Charset charset = charsetThatHasUnits();
    return new Terminal(
        printing(FileDescriptor.out, charset),
        printing(FileDescriptor.err, charset),
        System.in,
        charset,
        PersonAtInput.isThere());
  }

  /** Says one sentence to the person at the terminal. */
  void complain(String sentence) {
    err.println("mainsgap: " + sentence);
  }

  /** Standard output for code that wants a writer. */
  PrintWriter outWriter() {
    return new PrintWriter(new OutputStreamWriter(out, charset), true);
  }

  /** Standard error for code that wants a writer. */
  PrintWriter errWriter() {
    return new PrintWriter(new OutputStreamWriter(err, charset), true);
  }

  private static PrintStream printing(FileDescriptor descriptor, Charset charset) {
    return new PrintStream(new FileOutputStream(descriptor), true, charset);
  }

  /** A console that claims to have no ± or ° is mostly a UTF-8 one in a bare locale. */
  private static Charset charsetThatHasUnits() {
    Charset offered =
        Charset.forName(System.getProperty("sun.stdout.encoding", Charset.defaultCharset().name()));
    return offered.newEncoder().canEncode("±°µ") ? offered : StandardCharsets.UTF_8;
  }
}
