package parchment.kernel.stop;

import java.util.ArrayList;
import java.util.List;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * Methods of a cell's class that stand in for the methods of libraries which the cell names by reference: each looks whether the cell is
 * to stop, and then calls the one it stands for. So a stream without a line of the cell's own in its loop can be stopped.
 */
final class Bridges {
    private static final String METAFACTORY = "java/lang/invoke/LambdaMetafactory";
    private static final String CELL_PACKAGE = "REPL/";
    private static final int ACCESS = Opcodes.ACC_PRIVATE | Opcodes.ACC_STATIC | Opcodes.ACC_SYNTHETIC;

    /** Where the method stands among the arguments that make a function of it, and the flags of a rarer kind of function. */
    private static final int METHOD = 1;

    private static final int FLAGS = 3;
    private static final int SERIALIZABLE = 1;

    private record Bridge(String name, String descriptor, Handle to) {}

    private final List<Bridge> bridges = new ArrayList<>();
    private String owner = "";
    private boolean inInterface;

    void begin(String className, int access) {
        owner = className;
        inInterface = (access & Opcodes.ACC_INTERFACE) != 0;
    }

    /** Returns the arguments of a dynamic call with the reference to a library's method led over a bridge, where they hold one. */
    Object[] over(Object[] arguments, String descriptor, Handle bootstrap) {
        if (!bootstrap.getOwner().equals(METAFACTORY)
                || arguments.length > FLAGS && ((Integer) arguments[FLAGS] & SERIALIZABLE) != 0
                || !(arguments[METHOD] instanceof Handle to)
                || to.getTag()
                        == Opcodes.H_INVOKESPECIAL // javac makes a lambda of those; the call is possible there only.
                || to.getOwner().startsWith(CELL_PACKAGE)
                || to.getOwner().equals(owner)) {
            return arguments;
        }
        Bridge bridge =
                new Bridge("guarded$" + bridges.size(), descriptorOf(to, Type.getArgumentTypes(descriptor)), to);
        bridges.add(bridge);
        Object[] led = arguments.clone();
        led[METHOD] = new Handle(Opcodes.H_INVOKESTATIC, owner, bridge.name(), bridge.descriptor(), inInterface);
        return led;
    }

    /** @param kept what the function keeps from where it is made; that is the object in {@code object::method} */
    private static String descriptorOf(Handle to, Type[] kept) {
        Type object = Type.getObjectType(to.getOwner());
        Type[] taken = Type.getArgumentTypes(to.getDesc());
        if (to.getTag() == Opcodes.H_INVOKESTATIC) {
            return to.getDesc();
        }
        if (to.getTag() == Opcodes.H_NEWINVOKESPECIAL) {
            return Type.getMethodDescriptor(object, taken);
        }
        Type[] all = new Type[taken.length + 1];
        all[0] = kept.length == 0 ? object : kept[0];
        System.arraycopy(taken, 0, all, 1, taken.length);
        return Type.getMethodDescriptor(Type.getReturnType(to.getDesc()), all);
    }

    /** Adds the bridges to the class. */
    void write(ClassVisitor into) {
        for (Bridge bridge : bridges) {
            MethodVisitor method = into.visitMethod(ACCESS, bridge.name(), bridge.descriptor(), null, null);
            method.visitCode();
            GuardedBytecode.writeCheck(method);
            Handle to = bridge.to();
            if (to.getTag() == Opcodes.H_NEWINVOKESPECIAL) {
                method.visitTypeInsn(Opcodes.NEW, to.getOwner());
                method.visitInsn(Opcodes.DUP);
            }
            int at = 0;
            for (Type type : Type.getArgumentTypes(bridge.descriptor())) {
                method.visitVarInsn(type.getOpcode(Opcodes.ILOAD), at);
                at += type.getSize();
            }
            method.visitMethodInsn(call(to.getTag()), to.getOwner(), to.getName(), to.getDesc(), to.isInterface());
            method.visitInsn(Type.getReturnType(bridge.descriptor()).getOpcode(Opcodes.IRETURN));
            method.visitMaxs(0, 0);
            method.visitEnd();
        }
    }

    private static int call(int tag) {
        return switch (tag) {
            case Opcodes.H_INVOKESTATIC -> Opcodes.INVOKESTATIC;
            case Opcodes.H_NEWINVOKESPECIAL -> Opcodes.INVOKESPECIAL;
            case Opcodes.H_INVOKEINTERFACE -> Opcodes.INVOKEINTERFACE;
            default -> Opcodes.INVOKEVIRTUAL;
        };
    }
}
