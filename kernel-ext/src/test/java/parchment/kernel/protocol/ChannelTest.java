package parchment.kernel.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Room is made for no more than a message can hold. */
class ChannelTest {
    @Test
    void aPartForWhichThereIsNoRoomIsEmpty() {
        assertEquals(5, Channel.room(5).size());
        assertEquals(0, Channel.room(-1).size());
        assertEquals(0, Channel.room(Integer.MIN_VALUE).size());
        assertEquals(0, Channel.room(Integer.MAX_VALUE).size()); // No array of Java is so large.
    }
}
