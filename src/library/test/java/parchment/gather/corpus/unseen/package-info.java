/**
 * Twenty roasters' folders, written by somebody who had read the form of a logbook and a description of roasters' habits, and had never seen how folders are
 * gathered.
 */
package parchment.gather.corpus.unseen;
