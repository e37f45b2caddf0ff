namespace AutoSweep.Instruments.Links;

/// <summary>An instrument on the IEEE 488.1 bus: <c>GPIB[board]::primary[::secondary][::INSTR]</c>.</summary>
/// <param name="Text">The name as written.</param>
/// <param name="Board">The number of the interface board, 0 when left out.</param>
/// <param name="Primary">Primary address, 0 to 30.</param>
public sealed record GpibResource(string Text, int Board, int Primary) : ResourceName(Text);
