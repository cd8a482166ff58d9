package parchment.kernel.widget;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.control.ControlBox;
import parchment.display.live.Live;

/**
 * Which controls are alive, the oldest first, and which of them give way to newer ones. What is in a box stays as long as the box, and
 * goes with it unless it was shown by itself too. Not safe for threads.
 */
final class AliveControls {
    static final int MOST = 200;

    /**
     * What stands for a control.
     *
     * @param members the views of what is in it, as they were when it was opened
     */
    record Alive(String view, List<WidgetModel> models, List<String> members) {}

    private final Map<Live, Alive> alive = new LinkedHashMap<>();
    private final Set<Live> byThemselves = Collections.newSetFromMap(new IdentityHashMap<>());

    /** Returns what stands for a control if that is alive with all that is in it. */
    Optional<Alive> whole(Live live) {
        return Optional.ofNullable(alive.get(live))
                .filter(known -> known.members().equals(viewsOf(live)));
    }

    private List<String> viewsOf(Live live) {
        return live instanceof ControlBox box
                ? box.members().stream()
                        .map(member -> whole(member).map(Alive::view))
                        .flatMap(Optional::stream)
                        .toList()
                : List.of();
    }

    void add(Live live, Alive opened) {
        alive.put(live, opened);
    }

    /** Takes note that a control has a place on a page outside any box. */
    void shownByItself(Live live) {
        byThemselves.add(live);
    }

    Optional<Alive> remove(Live live) {
        byThemselves.remove(live);
        return Optional.ofNullable(alive.remove(live));
    }

    Collection<Alive> all() {
        return alive.values();
    }

    /**
     * Returns what is to give way: the oldest past the most, but nothing of what was shown just now, and nothing of a box that stays.
     *
     * @param shown what was shown just now
     */
    List<Live> past(Live shown) {
        List<Live> going = new ArrayList<>();
        int before;
        do {
            before = going.size();
            for (Live each : alive.keySet()) {
                if (alive.size() - going.size() > MOST && !going.contains(each) && !isHeld(each, shown, going)) {
                    addWithMembers(each, shown, going);
                }
            }
        } while (going.size() > before);
        return going;
    }

    private void addWithMembers(Live live, Live shown, List<Live> going) {
        going.add(live);
        if (live instanceof ControlBox box) {
            box.members().stream()
                    .filter(member -> alive.containsKey(member)
                            && !byThemselves.contains(member)
                            && !going.contains(member)
                            && !isHeld(member, shown, going))
                    .forEach(member -> addWithMembers(member, shown, going));
        }
    }

    private boolean isHeld(Live live, Live shown, List<Live> going) {
        return live == shown
                || alive.keySet().stream()
                        .anyMatch(other -> other instanceof ControlBox box
                                && !going.contains(box)
                                && box.members().contains(live));
    }
}
