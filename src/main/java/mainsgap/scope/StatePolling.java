package mainsgap.scope;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How to ask for the state of the acquisition: the questions are asked in their order until one
 * decides. A stopped instrument reads as {@link AcquisitionState#IDLE}; whether that means a whole
 * record is for the driver, which knows what it saw before.
 *
 * @param otherwise the state where no question decides
 */
record StatePolling(List<Question> questions, AcquisitionState otherwise) {

  StatePolling {
    questions = List.copyOf(questions);
  }

  /** Whether it can tell an instrument that fills its pre-trigger part from one that watches. */
  boolean tellsFilling() {
    return otherwise == AcquisitionState.FILLING
        || questions.stream().anyMatch(question -> question.canMean(AcquisitionState.FILLING));
  }

  /** One question. */
  sealed interface Question {
    CommandTemplate query();

    boolean canMean(AcquisitionState state);
  }

  /** One word for each state, in capitals. */
  record ByWords(CommandTemplate query, Map<String, AcquisitionState> words) implements Question {
    public ByWords {
      words = Map.copyOf(words);
    }

    @Override
    public boolean canMean(AcquisitionState state) {
      return words.containsValue(state);
    }
  }

  /**
   * A register: the first row that holds decides.
   *
   * @param clearsWhenRead whether reading clears it, so that what it said must be remembered
   */
  record ByBits(CommandTemplate query, List<Bit> bits, boolean clearsWhenRead) implements Question {
    public ByBits {
      bits = List.copyOf(bits);
    }

    @Override
    public boolean canMean(AcquisitionState state) {
      return bits.stream().anyMatch(bit -> bit.means() == state);
    }

    Optional<AcquisitionState> meaning(long register) {
      return bits.stream().filter(bit -> bit.holds(register)).map(Bit::means).findFirst();
    }
  }

  /**
   * A bit of the register.
   *
   * @param number from 0
   * @param clear whether it counts while it is clear
   * @param means the state while it counts
   */
  record Bit(int number, boolean clear, AcquisitionState means) {
    boolean holds(long register) {
      return (register >> number & 1) == (clear ? 0 : 1);
    }
  }
}
