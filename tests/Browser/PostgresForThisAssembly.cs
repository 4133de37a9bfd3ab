using FleetWake.Tests.Kit;

[assembly: AssemblyFixture(typeof(PostgresFixture))]
