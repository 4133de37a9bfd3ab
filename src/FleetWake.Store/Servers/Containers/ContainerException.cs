namespace FleetWake.Store.Servers.Containers;

/// <summary>There is no container. The message is half a sentence that goes on after "but".</summary>
internal sealed class ContainerException(string whyNot) : Exception(whyNot);
