namespace AutoSweep.Core.Decades;

/// <summary>Where the dials of a box stand, the largest decade first.</summary>
/// <param name="positions">A position a dial.</param>
public sealed class DialSetting(IReadOnlyList<int> positions) : IEquatable<DialSetting>
{
    /// <summary>A position a dial, the largest decade first.</summary>
    public IReadOnlyList<int> Positions => positions;

    /// <summary>How many dials must be turned to come here; all that are not at 0 where nothing is dialled yet.</summary>
    /// <param name="from">Where the dials stand; none for a box at rest.</param>
    public int TurnsFrom(DialSetting? from) => positions.Where((position, dial) => position != (from?.Positions[dial] ?? 0)).Count();

    /// <inheritdoc/>
    public bool Equals(DialSetting? other) => other is not null && positions.SequenceEqual(other.Positions);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as DialSetting);

    /// <inheritdoc/>
    public override int GetHashCode() => positions.Aggregate(17, (hash, position) => HashCode.Combine(hash, position));

    /// <summary>The positions, as in <c>1-0-4</c>.</summary>
    public override string ToString() => string.Join('-', positions);
}
