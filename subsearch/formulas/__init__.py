"""Laws: what physics, geometry and arithmetic say. Numbers in, numbers out; published tables with their sources."""
