package org.stook.node;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;

/**
 * When a worker process takes nothing for want of room, as {@code stook.worker.room.*}.
 *
 * @param leastFree what must be free both on the local disk and where composites go
 */
@ConfigurationProperties("stook.worker.room")
public record RoomProperties(@DefaultValue("1GB") DataSize leastFree) {}
