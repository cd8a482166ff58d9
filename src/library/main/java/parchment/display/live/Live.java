package parchment.display.live;

import parchment.display.Display;
import parchment.display.Showable;

/**
 * Something that a person at a live page can move, press or choose from, so that Java hears of it.
 *
 * <p>Its text and HTML are what stands on any other page: still, and in words. How a live page draws it and carries what the person does
 * is the page's business ({@link Display.Target#live}).
 */
public interface Live extends Showable {}
