namespace AutoSweep.Instruments.Links;

/// <summary>A USB test and measurement instrument by the Linux kernel's device file: <c>/dev/usbtmc0</c>.</summary>
/// <param name="Text">The name as written.</param>
/// <param name="Path">The device file. Its number changes from plug to plug; <see cref="UsbResource"/> stays.</param>
public sealed record UsbtmcFileResource(string Text, string Path) : ResourceName(Text);
