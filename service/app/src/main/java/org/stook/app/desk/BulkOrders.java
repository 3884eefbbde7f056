package org.stook.app.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** One order for many runs. Each is a transaction and an audit entry of its own: what one of them refuses stops no other. */
@Component
class BulkOrders {
    static final int MOST = 500;
    private static final String PRIORITY = "priority";
    private static final int GREATEST = 100;

    record Refused(long run, String reason) {}

    /** @param done runs that the order was followed for */
    record Outcome(List<Long> done, List<Refused> refused) {
        /** For the line on the page. */
        String sentence(String order) {
            String first = done.size() + (done.size() == 1 ? " run was" : " runs were") + " told to "
                    + (order.equals(PRIORITY) ? "change priority" : order) + ".";
            if (refused.isEmpty()) return first;
            return first + " " + refused.size() + (refused.size() == 1 ? " was not" : " were not")
                    + ", the first because " + refused.get(0).reason() + ".";
        }
    }

    private final Orders orders;

    BulkOrders(Orders orders) {
        this.orders = orders;
    }

    /**
     * @param order hold, release, cancel, retry or priority
     * @param priority 0 to 100, for that order
     * @throws Refusal if the order makes no sense for any run; then nothing was done
     */
    Outcome order(List<Long> runs, String order, @Nullable Integer priority, String actor) {
        if (runs.isEmpty()) throw Refusal.unfit("run: no run was chosen");
        if (runs.size() > MOST) {
            throw Refusal.unfit("run: found %d runs, expected at most %d at a time".formatted(runs.size(), MOST));
        }
        LongConsumer deed = deed(order, priority, actor);
        List<Long> done = new ArrayList<>();
        List<Refused> refused = new ArrayList<>();
        for (long run : runs.stream().distinct().sorted().toList()) {
            try {
                deed.accept(run);
                done.add(run);
            } catch (Refusal refusal) {
                refused.add(new Refused(run, String.valueOf(refusal.getReason())));
            }
        }
        return new Outcome(done, refused);
    }

    private LongConsumer deed(String order, @Nullable Integer priority, String actor) {
        if (!order.equals(PRIORITY)) {
            Orders.Verb verb = Orders.Verb.of(order);
            return run -> orders.order(run, verb, actor);
        }
        if (priority == null || priority < 0 || priority > GREATEST) {
            throw Refusal.unfit("priority: found " + priority + ", expected a whole number from 0 to " + GREATEST);
        }
        return run -> orders.prioritise(run, priority, actor);
    }
}
