using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PlantWatch.Core.Quantities;

/// <summary>A moment on the UTC time line, in whole microseconds. The default value is <see cref="Never"/>.</summary>
/// <remarks>Core reads no clock: every instant is an argument. Written as ISO 8601 with a trailing Z.</remarks>
[JsonConverter(typeof(InstantJson))]
public readonly record struct Instant : IComparable<Instant>
{
    private Instant(long unixMicroseconds) => UnixMicroseconds = unixMicroseconds;

    /// <summary>Microseconds since 1970-01-01T00:00:00Z. Zero means <see cref="Never"/>.</summary>
    public long UnixMicroseconds { get; }

    /// <summary>No moment at all: nothing has happened yet. Sorts before every real instant of a plant's life.</summary>
    public static Instant Never => default;

    /// <summary>True for every instant but <see cref="Never"/>.</summary>
    public bool IsSet => UnixMicroseconds != 0;

    /// <summary>Milliseconds since 1970-01-01T00:00:00Z, rounded down.</summary>
    public long UnixMilliseconds => (long)Math.Floor(UnixMicroseconds / 1000.0);

    /// <summary>An instant from microseconds since the Unix epoch.</summary>
    public static Instant FromUnixMicroseconds(long microseconds) => new(microseconds);

    /// <summary>An instant from milliseconds since the Unix epoch.</summary>
    public static Instant FromUnixMilliseconds(long milliseconds) => new(checked(milliseconds * 1000));

    /// <summary>An instant from a date and time; anything finer than a microsecond is cut off.</summary>
    public static Instant From(DateTimeOffset time) => new((time.UtcTicks - DateTimeOffset.UnixEpoch.UtcTicks) / 10);

    /// <summary>An instant from a UTC calendar time, for tests and constants.</summary>
    public static Instant FromUtc(int year, int month, int day, int hour = 0, int minute = 0, int second = 0) =>
        From(new DateTimeOffset(year, month, day, hour, minute, second, TimeSpan.Zero));

    /// <summary>Reads ISO 8601 with an offset or Z; text without an offset is refused, since it names no instant.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, out Instant instant)
    {
        instant = default;
        if (string.IsNullOrWhiteSpace(text) || !NamesAnOffset(text)) return false;
        if (!DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)) return false;
        instant = From(time);
        return true;
    }

    private static bool NamesAnOffset(string text)
    {
        var t = text.IndexOf('T', StringComparison.Ordinal);
        return t > 0 && (text.EndsWith('Z') || text.IndexOfAny(['+', '-'], t) > 0);
    }

    /// <summary>The same moment as a UTC <see cref="DateTimeOffset"/>.</summary>
    public DateTimeOffset ToDateTimeOffset() => DateTimeOffset.UnixEpoch.AddTicks(UnixMicroseconds * 10);

    /// <summary>The later of two instants.</summary>
    public static Instant Later(Instant a, Instant b) => a >= b ? a : b;

    /// <summary>The earlier of two instants.</summary>
    public static Instant Earlier(Instant a, Instant b) => a <= b ? a : b;

    /// <inheritdoc/>
    public int CompareTo(Instant other) => UnixMicroseconds.CompareTo(other.UnixMicroseconds);

    /// <summary>ISO 8601 in UTC with microseconds, shortened where they are zero.</summary>
    public override string ToString()
    {
        var format = UnixMicroseconds % 1_000_000 == 0 ? "yyyy-MM-dd'T'HH:mm:ss'Z'"
            : UnixMicroseconds % 1000 == 0 ? "yyyy-MM-dd'T'HH:mm:ss.fff'Z'" : "yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'";
        return ToDateTimeOffset().ToString(format, CultureInfo.InvariantCulture);
    }

    /// <summary>Moves an instant by a span.</summary>
    public static Instant operator +(Instant a, TimeSpan b) => new(a.UnixMicroseconds + (b.Ticks / 10));

    /// <summary>Moves an instant back by a span.</summary>
    public static Instant operator -(Instant a, TimeSpan b) => new(a.UnixMicroseconds - (b.Ticks / 10));

    /// <summary>The span from <paramref name="b"/> to <paramref name="a"/>.</summary>
    public static TimeSpan operator -(Instant a, Instant b) => TimeSpan.FromTicks((a.UnixMicroseconds - b.UnixMicroseconds) * 10);

    /// <summary>Earlier than.</summary>
    public static bool operator <(Instant a, Instant b) => a.UnixMicroseconds < b.UnixMicroseconds;

    /// <summary>Later than.</summary>
    public static bool operator >(Instant a, Instant b) => a.UnixMicroseconds > b.UnixMicroseconds;

    /// <summary>Earlier than or the same.</summary>
    public static bool operator <=(Instant a, Instant b) => a.UnixMicroseconds <= b.UnixMicroseconds;

    /// <summary>Later than or the same.</summary>
    public static bool operator >=(Instant a, Instant b) => a.UnixMicroseconds >= b.UnixMicroseconds;
}

internal sealed class InstantJson : JsonConverter<Instant>
{
    public override Instant Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.Null) return Instant.Never;
        return Instant.TryParse(reader.GetString(), out var instant)
            ? instant
            : throw new JsonException("expected an ISO 8601 time with an offset, such as 2026-03-01T07:30:00Z");
    }

    public override void Write(Utf8JsonWriter writer, Instant value, JsonSerializerOptions options)
    {
        if (value.IsSet) writer.WriteStringValue(value.ToString());
        else writer.WriteNullValue();
    }

    public override bool HandleNull => true;
}
