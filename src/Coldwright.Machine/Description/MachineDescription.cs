namespace Coldwright.Machine.Description;

/// <summary>The cooler as built, read from <c>machine.yaml</c>: parts, the lines that join them, charge, room. Immutable, SI throughout, pressures absolute.</summary>
public sealed record MachineDescription
{
    /// <summary>The builder's name for the cooler.</summary>
    public required string Name { get; init; }
    /// <summary>The room it stands in.</summary>
    public required RoomDescription Room { get; init; }
    /// <summary>The gas mixture of the loop.</summary>
    public required ChargeDescription Charge { get; init; }
    /// <summary>The two pressures it runs at.</summary>
    public required OperationDescription Operation { get; init; }
    /// <summary>All parts in file order.</summary>
    public required IReadOnlyList<Part> Parts { get; init; }
    /// <summary>All lines in file order.</summary>
    public required IReadOnlyList<Line> Lines { get; init; }

    /// <summary>The parts of one kind, in file order.</summary>
    public IEnumerable<T> PartsOf<T>() where T : Part => Parts.OfType<T>();
}
