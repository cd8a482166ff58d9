package parchment.handbook;

import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.CustomBlock;
import org.commonmark.node.Image;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;

/** A box around a table or a picture, in which it can be moved sideways where the page is narrower. */
final class Frame extends CustomBlock {
    /** What is in the box. */
    enum Holds {
        TABLE,
        PICTURE
    }

    private final Holds holds;

    private Frame(Holds holds) {
        this.holds = holds;
    }

    Holds holds() {
        return holds;
    }

    /** Puts every table, and every picture that stands by itself, into a frame. */
    static void around(Node document) {
        document.accept(new AbstractVisitor() {
            @Override
            public void visit(CustomBlock block) {
                if (block instanceof TableBlock) {
                    frame(block, Holds.TABLE).appendChild(block);
                }
            }

            @Override
            public void visit(Paragraph paragraph) {
                Node first = paragraph.getFirstChild();
                if (first instanceof Image image
                        && image.getNext() == null
                        && image.getDestination().startsWith("data:")) {
                    frame(paragraph, Holds.PICTURE).appendChild(first);
                    paragraph.unlink();
                }
            }
        });
    }

    private static Frame frame(Node before, Holds holds) {
        Frame frame = new Frame(holds);
        before.insertBefore(frame);
        return frame;
    }
}
