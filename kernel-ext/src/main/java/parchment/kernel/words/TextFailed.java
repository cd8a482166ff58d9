package parchment.kernel.words;

/** Stands for something thrown whose own methods fail, so that nothing more can be said of it. */
final class TextFailed extends Exception {
    private static final long serialVersionUID = 1L;

    TextFailed(Throwable thrown) {
        super(
                "`" + thrown.getClass().getSimpleName()
                        + "` was thrown. What it says of itself cannot be shown, because a method of its own that tells it failed.");
    }
}
