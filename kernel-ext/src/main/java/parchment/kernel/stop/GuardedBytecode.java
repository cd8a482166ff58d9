package parchment.kernel.stop;

import java.lang.reflect.Field;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * Rewrites the classes of a cell so that it can always be stopped and cannot end the session.
 *
 * <p>A check goes to the start of every method (so that recursion ends, and a stream that calls the cell's lambdas for ever), before every
 * jump backwards (each turn of a loop) and to the start of every catch block (so that a loop that swallows every error ends too). A
 * reference to a library's method, as in {@code Stream.generate(Math::random)}, becomes one to a method of the cell that checks and calls
 * it. {@code System.exit}, {@code Runtime.exit} and {@code Runtime.halt} become calls that end the cell alone, also where they are named
 * as method references, or reached by reflection or a method handle from the cell's own code. What a library does that the cell calls is
 * not seen. Assertions of a cell are always looked at.
 *
 * <p>Why in the byte code: the security manager that could refuse an exit is off by default from 17 and gone from 24, and
 * {@code Thread.stop} is gone from 20; this way acts the same on every version.
 */
final class GuardedBytecode {
    private static final String GUARD = Type.getInternalName(CellGuard.class);
    private static final String RUNTIME_EXIT = "(Ljava/lang/Runtime;I)V";

    /** Ways to a method handle of a method. */
    private static final Set<String> FINDS = Set.of("findStatic", "findVirtual", "unreflect");

    /** The newest level of class files that the byte code library names, found out from it. */
    static final int NEWEST = newest();

    private GuardedBytecode() {}

    private static int newest() {
        return Arrays.stream(Opcodes.class.getFields())
                .filter(field -> field.getName().matches("V[0-9]+"))
                .mapToInt(GuardedBytecode::level)
                .max()
                .orElseThrow();
    }

    private static int level(Field field) {
        try {
            return field.getInt(null);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }

    static void writeCheck(MethodVisitor method) {
        method.visitMethodInsn(Opcodes.INVOKESTATIC, GUARD, "check", "()V", false);
    }

    /** Tells whether the class file is of a Java that the byte code library knows. */
    static boolean knows(byte[] classFile) {
        int major = (classFile[6] & 0xff) << 8 | classFile[7] & 0xff;
        return major <= NEWEST;
    }

    /**
     * Returns the class with its checks.
     *
     * @throws RuntimeException if the class file is of a newer Java than the byte code library knows, or a method gets too long by its
     *     checks
     */
    static byte[] guard(byte[] classFile) {
        ClassReader reader = new ClassReader(classFile);
        ClassWriter writer = new ClassWriter(reader, ClassWriter.COMPUTE_MAXS);
        reader.accept(new GuardedClass(writer), 0);
        return writer.toByteArray();
    }

    private static final class GuardedClass extends ClassVisitor {
        private final Bridges bridges = new Bridges();

        GuardedClass(ClassVisitor next) {
            super(Opcodes.ASM9, next);
        }

        @Override
        public void visit(
                int version, int access, String name, String signature, String superName, String[] interfaces) {
            bridges.begin(name, access);
            super.visit(version, access, name, signature, superName, interfaces);
        }

        @Override
        public MethodVisitor visitMethod(
                int access, String name, String descriptor, String signature, String[] exceptions) {
            // A class whose first use fails can never be used again, so that is let run but for its loops.
            boolean checksEntry = !name.equals("<clinit>");
            return new Guard(super.visitMethod(access, name, descriptor, signature, exceptions), bridges, checksEntry);
        }

        @Override
        public void visitEnd() {
            bridges.write(cv);
            super.visitEnd();
        }
    }

    private static final class Guard extends MethodVisitor {
        private final Set<Label> passed = new HashSet<>();
        private final Set<Label> catches = new HashSet<>();
        private final Bridges bridges;
        private final boolean checksEntry;
        private boolean catchBegins;

        Guard(MethodVisitor next, Bridges bridges, boolean checksEntry) {
            super(Opcodes.ASM9, next);
            this.bridges = bridges;
            this.checksEntry = checksEntry;
        }

        @Override
        public void visitCode() {
            super.visitCode();
            if (checksEntry) {
                check();
            }
        }

        @Override
        public void visitTryCatchBlock(Label start, Label end, Label handler, String type) {
            // A handler without a type is a finally block, or the exit of a synchronized one: those are let run.
            if (type != null) {
                catches.add(handler);
            }
            super.visitTryCatchBlock(start, end, handler, type);
        }

        @Override
        public void visitLabel(Label label) {
            passed.add(label);
            catchBegins |= catches.contains(label);
            super.visitLabel(label);
        }

        @Override
        public void visitVarInsn(int opcode, int variable) {
            super.visitVarInsn(opcode, variable);
            if (catchBegins && opcode == Opcodes.ASTORE) {
                catchBegins = false;
                check();
            }
        }

        @Override
        public void visitInsn(int opcode) {
            super.visitInsn(opcode);
            if (catchBegins && opcode == Opcodes.POP) {
                catchBegins = false;
                check();
            }
        }

        @Override
        public void visitJumpInsn(int opcode, Label label) {
            if (passed.contains(label)) {
                check();
            }
            super.visitJumpInsn(opcode, label);
        }

        @Override
        public void visitMethodInsn(int opcode, String owner, String name, String descriptor, boolean isInterface) {
            if (endsTheSession(owner, name, descriptor)) {
                String stand = opcode == Opcodes.INVOKESTATIC ? "(I)V" : RUNTIME_EXIT;
                super.visitMethodInsn(Opcodes.INVOKESTATIC, GUARD, "exit", stand, false);
                return;
            }
            if (owner.equals("java/lang/Class") && name.equals("desiredAssertionStatus")) {
                super.visitMethodInsn(Opcodes.INVOKESTATIC, GUARD, name, "(Ljava/lang/Class;)Z", false);
                return;
            }
            if (owner.equals("java/lang/reflect/Method") && name.equals("invoke")) {
                checkReflected();
            } else if (owner.equals("java/lang/invoke/MethodHandles$Lookup") && FINDS.contains(name)) {
                // The lookup and what was asked of it become the arguments of the stand-in.
                String stand = "(L" + owner + ";" + descriptor.substring(1);
                super.visitMethodInsn(Opcodes.INVOKESTATIC, GUARD, name, stand, false);
                return;
            }
            super.visitMethodInsn(opcode, owner, name, descriptor, isInterface);
        }

        /** Shows the method to the guard, and leaves the stack as it was: method, object, arguments. */
        private void checkReflected() {
            super.visitInsn(Opcodes.DUP2_X1);
            super.visitInsn(Opcodes.POP2);
            super.visitInsn(Opcodes.DUP);
            super.visitMethodInsn(Opcodes.INVOKESTATIC, GUARD, "checkCall", "(Ljava/lang/reflect/Method;)V", false);
            super.visitInsn(Opcodes.DUP_X2);
            super.visitInsn(Opcodes.POP);
        }

        @Override
        public void visitInvokeDynamicInsn(String name, String descriptor, Handle bootstrap, Object... arguments) {
            Object[] guarded = arguments.clone();
            for (int i = 0; i < guarded.length; i++) {
                if (guarded[i] instanceof Handle handle
                        && endsTheSession(handle.getOwner(), handle.getName(), handle.getDesc())) {
                    String stand = handle.getTag() == Opcodes.H_INVOKESTATIC ? "(I)V" : RUNTIME_EXIT;
                    guarded[i] = new Handle(Opcodes.H_INVOKESTATIC, GUARD, "exit", stand, false);
                }
            }
            super.visitInvokeDynamicInsn(name, descriptor, bootstrap, bridges.over(guarded, descriptor, bootstrap));
        }

        private void check() {
            writeCheck(mv);
        }

        private static boolean endsTheSession(String owner, String name, String descriptor) {
            return descriptor.equals("(I)V")
                    && (owner.equals("java/lang/System") && name.equals("exit")
                            || owner.equals("java/lang/Runtime") && (name.equals("exit") || name.equals("halt")));
        }
    }
}
