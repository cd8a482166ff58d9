package parchment.kernel;

public final class KernelMain {
    private KernelMain() {}

    public static void main(String[] a) {}
}
